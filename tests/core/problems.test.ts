import { describe, expect, it } from 'vitest';
import { formatProblem, isError, quoted, showPath } from '../../src/core/problems.js';

describe('showing a problem', () => {
  it.each([
    [[], ''],
    [['lines', 'D0_P', 'mate'], 'lines.D0_P.mate'],
    [['connector', 'pins', 3, 'line'], 'connector.pins[3].line'],
    [['lines', 'V+', 'note'], 'lines.V+.note'],
    [['units', 'k Ω'], 'units["k Ω"]'],
    [['a.b', 0], '["a.b"][0]'],
    [['\u001b[2J'], '["␛[2J"]'],
  ])('should show the path %j as %s', (path, shown) => {
    expect(showPath(path)).toBe(shown);
  });

  it('should be one line with place, weight, path, what and fix', () => {
    const problem = { path: ['id'], line: 3, what: 'it is wrong', fix: 'mend it' };
    expect(formatProblem('F', problem)).toBe('F:3: error: id: it is wrong; mend it');
    expect(formatProblem('F', { level: 'warning', path: [], what: 'odd', fix: 'look' })).toBe(
      'F: warning: odd; look',
    );
  });

  it('should call a problem an error unless it says otherwise', () => {
    expect(isError({ path: [], what: '', fix: '' })).toBe(true);
    expect(isError({ level: 'warning', path: [], what: '', fix: '' })).toBe(false);
  });

  it('should quote foreign text cleaned and cut', () => {
    expect(quoted('a\nb')).toBe('"a␊b"');
    expect(quoted('x'.repeat(500)).length).toBeLessThanOrEqual(62);
  });
});
