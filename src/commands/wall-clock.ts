// The wall time and zone that a session file carries: for people, never for measuring.
export const wallClock = (): { readonly wallTime: string; readonly zone: string } => ({
  wallTime: new Date().toISOString(),
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
});
