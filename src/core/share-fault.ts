// What can go wrong between this program and a shop's server. `at` is the address as it may be shown.
export type ShareFault =
  | { readonly fault: 'unreachable'; readonly at: string; readonly why: string }
  | { readonly fault: 'too-slow'; readonly at: string; readonly seconds: number }
  | { readonly fault: 'answered'; readonly at: string; readonly status: number }
  | { readonly fault: 'cut-short'; readonly at: string }
  | { readonly fault: 'too-large'; readonly at: string; readonly mostBytes: number }
  | { readonly fault: 'sent-elsewhere'; readonly at: string; readonly to: string }
  | { readonly fault: 'sent-in-circles'; readonly at: string }
  | { readonly fault: 'token-in-clear'; readonly at: string }
  | { readonly fault: 'wrong-hash'; readonly at: string }
  | { readonly fault: 'changed-on-disk'; readonly at: string };

/** Whether trying again later may help: the network, the server's own trouble, or too much at once. */
export const isPassing = (found: ShareFault): boolean => {
  switch (found.fault) {
    case 'unreachable':
    case 'too-slow':
    case 'cut-short':
      return true;
    case 'answered':
      return (
        found.status >= 500 || found.status === 408 || found.status === 425 || found.status === 429
      );
    default:
      return false;
  }
};

/** Seconds to wait before the next attempt, doubling up to a minute; `asked` is the server's own wish. */
export const waitBefore = (attempt: number, asked: number | null): number =>
  Math.min(60, Math.max(2 ** (attempt - 1), asked ?? 0));
