"""``python -m hoopwright``."""

import sys

from hoopwright.cli import main

sys.exit(main())
