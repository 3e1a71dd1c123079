// Fails a test that prints or leaves a promise unhandled: a passing test is a silent one.
import { afterEach, beforeEach, expect, vi } from 'vitest';

const methods = ['log', 'info', 'warn', 'error', 'debug'] as const;

beforeEach(() => {
  for (const method of methods) vi.spyOn(console, method).mockImplementation(() => undefined);
});

afterEach(() => {
  for (const method of methods) expect(vi.mocked(console[method])).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});
