// Notices that a port has hung up where nobody says so: when it happens between two reads, every later read gives
// nothing and no error. Asked for its control lines the port answers otherwise from then on; many have none, so what
// counts is that it is another answer than at first. It is asked only while nothing is heard.

export interface AskedPort {
  readonly isOpen: boolean;
  get(done: (error: Error | null) => void): void;
}

export interface HangUpWatch {
  /** Bytes came: the port is there. */
  heard(): void;
  stop(): void;
}

const everyMs = 500;

export const watchHangUp = (port: AskedPort, hungUp: () => void): HangUpWatch => {
  let isHeard = false;
  let atFirst: string | undefined;
  const ask = (): void =>
    port.get((error) => {
      if (timer === undefined) return;
      const answer = error?.message ?? 'sound';
      atFirst ??= answer;
      if (error && answer !== atFirst) hungUp();
    });
  const look = (): void => {
    if (!isHeard && port.isOpen) ask();
    isHeard = false;
  };
  let timer: NodeJS.Timeout | undefined = setInterval(look, everyMs);
  ask();
  return {
    heard: () => {
      isHeard = true;
    },
    stop: () => {
      clearInterval(timer);
      timer = undefined;
    },
  };
};
