"""``python -m reviewer`` is ``dryfit``."""

import sys

from reviewer.cli import main

sys.exit(main())
