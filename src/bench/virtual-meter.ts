// A meter at work on the simulated board, speaking a shipped driver's protocol: text from the program goes in,
// lines come out, time is passed in. The same seed and the same requests at the same times give the same lines.
import type { Numbered } from '../core/events.js';
import type { Driver } from '../core/meter/driver-format.js';
import type { MeasureFunction } from '../core/reading.js';
import type { Ranging } from './autorange.js';
import { displayRanges } from './display.js';
import { createMeter } from './meter.js';
import { seeded } from './seeded.js';
import { createSpeech } from './speech.js';
import { type Trouble, throughTrouble } from './trouble.js';
import { createWorld, type World, type WorldSetup } from './world.js';

/** What the world around the meter is made of, and the meter itself. */
export interface VirtualMeterSetup
  extends Omit<WorldSetup, 'highest' | 'showsValue' | 'resetMeter'> {
  readonly driver: Driver;
  readonly troubles: readonly Trouble[];
  readonly ranging: Ranging;
  /** Full scale of a fixed range set at the meter, or null under autorange. A program may set another. */
  readonly range: number | null;
  /** Without a word from the program for so long, the meter switches itself off; null: never. */
  readonly autoOffS: number | null;
}

export interface VirtualMeter {
  /** Seconds of its own world, from 0. */
  readonly nowS: number;
  /** When it will have something to do; infinite while it only waits for requests. */
  nextS(): number;
  /** Lets time pass; returns the lines said on the way, without their ends. */
  advanceTo(worldS: number): readonly string[];
  /** Text as the program sent it, at the world's present time. */
  receive(text: string): void;
  /** The link is new: half a request is forgotten. */
  reconnect(): void;
  hear(event: Numbered): void;
  /** Presses on a part, or lets go. */
  pressPart(part: string | null): void;
  /** The profile's name of the pin under the probe, or null in the air. */
  touchedPin(): string | null;
}

/**
 * @throws RangeError when a fault, a habit, a rate or a function does not fit.
 * @throws TypeError when the driver does not say how its meter speaks.
 */
export const createVirtualMeter = (setup: VirtualMeterSetup): VirtualMeter => {
  const { driver, seed, readingsPerS, measure, troubles, autoOffS } = setup;
  if (!(readingsPerS > 0)) throw new RangeError(`readings per second must be over 0`);
  const ranges = displayRanges(driver, measure.function);
  const meter = createMeter({ ...setup, random: seeded(seed, 'meter') });
  const state = {
    on: true,
    turnedTo: null as MeasureFunction | null,
    showsValue: false,
    spokenToS: 0,
  };
  const world: World = createWorld({
    ...setup,
    highest: setup.range ?? ranges.at(-1)?.fullScale ?? ranges[0].fullScale,
    showsValue: () => state.on && state.showsValue,
    resetMeter: () => {
      meter.press(null);
      state.on = true;
      if (state.turnedTo !== null) speech.switchTo(measure.function);
      state.turnedTo = null;
      state.spokenToS = world.nowS;
    },
  });
  const otherFunction = driver.accuracy.find((row) => row.function !== measure.function)?.function;
  const speech = createSpeech({
    driver,
    readingsPerS,
    dial: () => state.turnedTo ?? measure.function,
    range: setup.range,
    convert: (toS, asked, range) => {
      const shown = meter.convert(world.sample(toS, asked), toS, asked, range);
      state.showsValue = 'value' in shown.reading;
      return shown;
    },
    pass: (toS) => world.advanceTo(toS),
  });
  const upcoming = [...troubles].sort((a, b) => a.atS - b.atS);

  const meet = (worldS: number): void => {
    for (let next = upcoming[0]; next !== undefined && next.atS <= worldS; next = upcoming[0]) {
      upcoming.shift();
      if (next.kind === 'button') meter.press(next.button);
      if (next.kind === 'dial') {
        state.turnedTo = next.to ?? otherFunction ?? measure.function;
        speech.switchTo(state.turnedTo);
      }
      if (next.kind === 'off') state.on = false;
    }
    if (autoOffS !== null && worldS - state.spokenToS > autoOffS) state.on = false;
  };

  return {
    get nowS() {
      return world.nowS;
    },
    nextS: () => speech.nextS(),
    advanceTo: (worldS) => {
      const said: string[] = [];
      for (let due = speech.nextS(); due <= worldS; due = speech.nextS()) {
        meet(due);
        const line = speech.step();
        const arrives = line === null || !state.on ? null : throughTrouble(line, due, troubles);
        if (arrives !== null) said.push(arrives);
      }
      world.advanceTo(worldS);
      return said;
    },
    receive: (text) => {
      if (!state.on) return;
      state.spokenToS = world.nowS;
      speech.receive(text, world.nowS);
    },
    reconnect: () => speech.reconnect(),
    hear: (event) => world.hear(event),
    pressPart: (part) => world.press(part),
    touchedPin: () => {
      const place = world.touched();
      return place === null ? null : (setup.profile.connector.pins[place]?.pin ?? null);
    },
  };
};
