// The terminal's size, kept up to date. A terminal that does not tell is taken as 80 by 24.

export interface SizedOutput {
  readonly columns?: number;
  readonly rows?: number;
  on(event: 'resize', call: () => void): unknown;
  off(event: 'resize', call: () => void): unknown;
}

export interface TerminalSize {
  subscribe(call: () => void): () => void;
  snapshot(): { readonly columns: number; readonly rows: number };
}

export const watchSize = (output: SizedOutput): TerminalSize => {
  let shown = { columns: output.columns || 80, rows: output.rows || 24 };
  return {
    subscribe(call) {
      output.on('resize', call);
      return () => output.off('resize', call);
    },
    snapshot() {
      const { columns, rows } = { columns: output.columns || 80, rows: output.rows || 24 };
      if (columns !== shown.columns || rows !== shown.rows) shown = { columns, rows };
      return shown;
    },
  };
};
