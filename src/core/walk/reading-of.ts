// What a capture read, as the events that give it a name tell it.
import type { EventOf } from '../events.js';
import type { MeasureFunction } from '../reading.js';
import type { Capture } from './state.js';

export const readingOf = (
  capture: Capture,
  measure: MeasureFunction,
): Omit<EventOf<'pin-settled'>, 'type' | 't' | 'touch' | 'pin' | 'line'> => {
  const { value, overload, standardUncertainty, readings, range, resolution, from, to } = capture;
  return {
    ...(value === undefined ? {} : { value }),
    ...(overload === undefined ? {} : { overload }),
    standardUncertainty,
    readings,
    function: measure,
    ...(range === undefined ? {} : { range }),
    resolution,
    from,
    to,
  };
};
