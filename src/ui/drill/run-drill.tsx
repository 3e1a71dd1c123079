// A drill on a terminal, until the trainee leaves.
import { type ReactElement, useSyncExternalStore } from 'react';
import type { Profile } from '../../core/profile/profile-format.js';
import { selectStrip } from '../../core/select/strip.js';
import type { Words } from '../../core/words/words.js';
import type { DrillSession } from '../../session/drill-session.js';
import { createNotices } from '../../session/notices.js';
import { detectAppearance } from '../appearance.js';
import type { Surroundings } from '../context.js';
import { keyMapWith } from '../keys/key-map.js';
import type { Key } from '../keys/parse-keys.js';
import { planLayout } from '../layout.js';
import { createScreenStore, type ScreenStore } from '../live/screen-store.js';
import { type TerminalSize, watchSize } from '../live/terminal-size.js';
import { showOnTerminal } from '../on-terminal.js';
import { WholeScreen } from '../parts/whole-screen.js';
import { quitOnSignals } from '../signals.js';
import { createTheme } from '../theme.js';
import { type Briefing, DrillBriefing } from './drill-briefing.js';
import { DrillEnd } from './drill-end.js';
import { type DrillWish, wishOf } from './drill-keys.js';
import { DrillScreen } from './drill-screen.js';

export interface DrillOptions {
  readonly session: DrillSession;
  readonly briefing: Briefing;
  readonly words: Words;
  readonly profile: Profile;
  readonly simulated: boolean;
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
}

/** Half way through, leaving asks once more: what was answered is not kept. */
type Stage = 'briefing' | 'playing' | 'leaving';

/** The session is started once the briefing is read. */
export const runDrill = async (options: DrillOptions): Promise<void> => {
  const { session, words, profile, simulated, briefing } = options;
  const { stdin = process.stdin, stdout = process.stdout } = options;
  const theme = createTheme(
    detectAppearance(process.env, stdout.isTTY ? stdout.getColorDepth() : 1),
  );
  const keys = keyMapWith({});
  const store = createScreenStore({
    session,
    words,
    keys,
    repeat: () => undefined,
    notices: createNotices(),
  });
  const leave = (): void => session.act({ act: 'quit' });
  const stopSignals = quitOnSignals(leave);
  let stage: Stage = 'briefing';
  const press = (key: Key): void => {
    const { view } = session.drill;
    const { wish } = wishOf(key, view);
    const loses = view.marked.length > 0 && !view.done;
    if (stage === 'briefing') {
      if (wish === 'leave') leave();
      if (wish === 'skip-ahead') {
        stage = 'playing';
        session.start();
      }
    } else if (stage === 'leaving') {
      if (wish === 'leave') leave();
      stage = 'playing';
    } else if (wish === 'leave' && loses) {
      stage = 'leaving';
    } else carryOut(wishOf(key, view), session);
    store.refresh();
  };
  const surroundings = { words, theme, keys, profile, simulated };
  const screen = (
    <DrillApp
      store={store}
      session={session}
      size={watchSize(stdout)}
      surroundings={surroundings}
      briefing={briefing}
      stage={() => stage}
    />
  );
  try {
    await showOnTerminal(screen, { stdin, stdout, press, gone: leave, ended: session.ended });
  } finally {
    store.stop();
    stopSignals();
  }
};

const carryOut = (wish: DrillWish, session: DrillSession): void => {
  switch (wish.wish) {
    case 'answer':
      session.drill.answer(wish.choice);
      break;
    case 'go-on':
      session.drill.goOn();
      break;
    case 'skip-ahead':
      session.drill.skipAhead();
      break;
    case 'control':
      session.replay.apply(wish.control);
      break;
    case 'leave':
      session.act({ act: 'quit' });
      break;
    case 'nothing':
      break;
  }
};

interface DrillAppProps {
  readonly store: ScreenStore;
  readonly session: DrillSession;
  readonly size: TerminalSize;
  readonly surroundings: Surroundings;
  readonly briefing: Briefing;
  stage(): Stage;
}

const DrillApp = ({
  store,
  session,
  size,
  surroundings,
  briefing,
  stage,
}: DrillAppProps): ReactElement => {
  const snapshot = useSyncExternalStore(store.subscribe, store.snapshot);
  const { columns, rows } = useSyncExternalStore(size.subscribe, size.snapshot);
  const layout = planLayout(columns, rows, selectStrip(snapshot.state).length);
  const { width, height } = layout;
  const { view } = session.drill;
  return (
    <WholeScreen surroundings={surroundings} width={width} height={height}>
      {stage() === 'briefing' ? (
        <DrillBriefing briefing={briefing} width={width} rows={height} />
      ) : view.done ? (
        <DrillEnd
          view={view}
          title={briefing.title}
          before={briefing.before}
          width={width}
          rows={height}
        />
      ) : (
        <DrillScreen
          snapshot={snapshot}
          view={view}
          layout={layout}
          leaving={stage() === 'leaving'}
        />
      )}
    </WholeScreen>
  );
};
