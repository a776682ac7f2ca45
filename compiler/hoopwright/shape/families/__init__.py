"""What single families add: hoops open in front, half hoops, side hoops, wheel, petticoats."""
