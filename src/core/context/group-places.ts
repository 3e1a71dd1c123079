// Places every line of a board in its group, for judging without known good values. Groups are kept apart by kind.
import {
  compareGroup,
  type GroupMember,
  type GroupStanding,
  pooledSpread,
} from './compare-group.js';
import type { LineRead } from './lines-read.js';
import { isMeasured, isOverloaded } from './read-pin.js';

/** Where a line stands in its group; or that it reads overload while most of its group conducts. */
export type GroupPlace = GroupStanding | 'alone-silent';

/** Lines without a group, or of which nothing can be said, have no entry. */
export const groupPlaces = (
  lines: ReadonlyMap<string, LineRead>,
): ReadonlyMap<string, GroupPlace> => {
  const groups = new Map<string, LineRead[]>();
  for (const line of lines.values()) {
    const { group, kind } = line.planned;
    if (group === undefined || kind === 'ground' || kind === 'unused') continue;
    const key = `${kind} ${group}`;
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  const members = new Map([...groups].map(([key, group]) => [key, group.flatMap(memberOf)]));
  const pooled = pooledSpread([...members.values()]);
  const places = new Map<string, GroupPlace>();
  for (const [key, group] of groups) {
    const own = members.get(key) ?? [];
    for (const standing of compareGroup(own, pooled).members) places.set(standing.line, standing);
    const silent = group.filter(({ read }) => isOverloaded(read));
    if (own.length < 2 || own.length <= silent.length) continue;
    for (const { line } of silent) places.set(line, 'alone-silent');
  }
  return places;
};

const memberOf = ({ line, planned, read }: LineRead): readonly GroupMember[] => {
  if (!isMeasured(read) || read.value <= planned.shortLimit || read.value <= 0) return [];
  const { expected } = planned;
  return [
    {
      line,
      value: read.value,
      standardUncertainty: read.standardUncertainty ?? 0,
      nominal: expected === null || expected === 'overload' ? null : expected.nominal,
    },
  ];
};
