"""python -m identify"""

import sys

from identify.cli import main

sys.exit(main())
