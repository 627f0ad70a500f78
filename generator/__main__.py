"""Start Packlarder from a checkout: `python3 generator build`.

Any Python must be able to read this file, so that one which is too old can say so.
What it imports may use today's words.
"""

import sys

if sys.version_info < (3, 11):
    sys.exit("Packlarder needs Python 3.11 or newer; this is Python %d.%d." % sys.version_info[:2])

from launch.start import main

sys.exit(main(sys.argv[1:]))
