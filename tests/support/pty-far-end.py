"""Opens a pseudo-terminal and stands at its far end.

Usage: pty-far-end.py NAME [UNLIKE]
The near end is reachable under NAME (a symbolic link) until this process ends. Bytes from standard input come
out of the near end; bytes written to the near end come out of standard output. Prints one line to standard
error when ready. The device is another than UNLIKE.
"""

import os
import select
import sys
import tty

name = sys.argv[1]
far, near = os.openpty()
passed_over = []
while os.ttyname(near) in sys.argv[2:]:
    passed_over += [far, near]
    far, near = os.openpty()
# Kept open here, so that the far end does not fail while nobody has the near end open.
tty.setraw(near)
os.symlink(os.ttyname(near), name)
print("ready", file=sys.stderr, flush=True)
try:
    while True:
        ready, _, _ = select.select([0, far], [], [])
        if far in ready:
            os.write(1, os.read(far, 65536))
        if 0 in ready:
            data = os.read(0, 65536)
            if not data:
                break
            while data:
                data = data[os.write(far, data):]
finally:
    os.unlink(name)
