"""What is printed when nobody reads on, as before ``| head``: it goes nowhere, and the run goes on."""

from __future__ import annotations

import os
from typing import TextIO


def unheard(stream: TextIO) -> None:
    """Whatever else is printed there goes nowhere."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream.fileno())
    os.close(nowhere)
