"""Runs a command in a pseudo-terminal of a given size.

Usage: pty-run.py COLUMNS ROWS COMMAND [ARGUMENT...]
What the command writes comes out of standard output, what comes in on standard input is typed. Prints the
command's process number to standard error. Ends with the command.
"""

import fcntl
import os
import pty
import select
import struct
import sys
import termios

columns, rows = int(sys.argv[1]), int(sys.argv[2])
child, far = pty.fork()
if child == 0:
    fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
    os.execvp(sys.argv[3], sys.argv[3:])
print(child, file=sys.stderr, flush=True)
inputs = [0, far]
while True:
    ready, _, _ = select.select(inputs, [], [])
    if far in ready:
        try:
            data = os.read(far, 65536)
        except OSError:
            break
        if not data:
            break
        os.write(1, data)
    if 0 in ready:
        data = os.read(0, 65536)
        if data:
            os.write(far, data)
        else:
            inputs.remove(0)
_, status = os.waitpid(child, 0)
sys.exit(os.waitstatus_to_exitcode(status) & 0xFF)
