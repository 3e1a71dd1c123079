// Ways to a pseudo-terminal without a compiler: a few lines of Python, or socat. Each relays between the
// terminal and its own standard input and output, and says on standard error what happens to it.

export interface PtyRelay {
  readonly program: 'python3' | 'socat';
  readonly args: readonly string[];
  /** What a line of standard error means, or null. */
  read(line: string): RelayWord | null;
}

export type RelayWord =
  | { readonly says: 'path'; readonly path: string }
  | { readonly says: 'opened' }
  | { readonly says: 'closed' };

/** The far end's presence shows as a hang-up that comes and goes; it is looked for 50 times a second. */
const pythonRelay = `
import os, select, sys, tty

def say(word):
    sys.stderr.write(word + "\\n")
    sys.stderr.flush()

master, slave = os.openpty()
tty.setraw(slave)
os.set_blocking(master, False)
say("path " + os.ttyname(slave))
os.close(slave)
here = False
while True:
    poll = select.poll()
    poll.register(master, 0)
    gone = bool(poll.poll(0))
    if here == gone:
        here = not gone
        say("opened" if here else "closed")
    poll = select.poll()
    poll.register(0, select.POLLIN)
    if here:
        poll.register(master, select.POLLIN)
    for ready, what in poll.poll(None if here else 20):
        try:
            if ready == 0:
                data = os.read(0, 4096)
                if not data:
                    sys.exit(0)
                if here:
                    os.write(master, data)
            elif what & select.POLLIN:
                os.write(1, os.read(master, 4096))
        except OSError:
            pass
`;

const words: Readonly<Record<string, RelayWord>> = {
  opened: { says: 'opened' },
  closed: { says: 'closed' },
};

export const ptyRelays: readonly PtyRelay[] = [
  {
    program: 'python3',
    args: ['-c', pythonRelay],
    read: (line) =>
      line.startsWith('path ') ? { says: 'path', path: line.slice(5) } : (words[line] ?? null),
  },
  {
    program: 'socat',
    args: ['-d', '-d', 'PTY,raw,echo=0,wait-slave,pty-interval=0.02', 'STDIO'],
    read: (line) => {
      const path = / PTY is (\/\S+)/u.exec(line)?.[1];
      if (path !== undefined) return { says: 'path', path };
      return line.includes('starting data transfer loop') ? { says: 'opened' } : null;
    },
  },
];
