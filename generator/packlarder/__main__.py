"""Start Packlarder where it is installed: `python -m packlarder build`."""

import sys

from packlarder.cli import main

sys.exit(main())
