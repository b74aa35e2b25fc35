import type { Terminal } from './terminal.js';

/** Work shorter than this needs no talk. */
const patienceMs = 500;

/** One line that says what is going on, shown only when somebody watches and it takes long. */
export interface Progress {
  /** Names the step that begins. */
  step(text: string): void;
  /** Takes the line away. */
  end(): void;
}

/** A progress line on the talk stream; silent where nobody watches. */
export function startProgress(terminal: Terminal): Progress {
  if (!terminal.watched) return { step() {}, end() {} };
  const startMs = performance.now();
  let current = 'working';
  let shown = false;
  const show = () => {
    shown = true;
    terminal.line(`${current} …`);
  };
  const timer = setTimeout(show, patienceMs);
  return {
    step(text) {
      current = text;
      if (performance.now() - startMs > patienceMs) show();
    },
    end() {
      clearTimeout(timer);
      if (shown) terminal.line('');
    },
  };
}
