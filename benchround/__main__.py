"""`python -m benchround`."""

import sys

from benchround.cli import main

sys.exit(main())
