import { describe, expect, it } from 'vitest';
import { type Loom, type LoomPlan, parseLoom, planLoom } from '@loomwright/harness';
import { looped } from '../support/looped-loom.js';
import { sandpiperText } from '../support/small-plan.js';

const read = (text: string): Loom => {
  const parsed = parseLoom(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.loom;
};
const loom = read(sandpiperText);
const plan = planLoom(loom);
const sneak = (of: LoomPlan, fault: string, by: 'wire' | 'loads') =>
  of.sneaks.find((one) => one.fault === fault && one.by === by);

/** Resistance of a relay's coil as hot as the file says. */
function coilOhm(of: Loom, item: string): number {
  const one = of.items[item];
  if (one?.kind !== 'load' || one.relay === undefined) throw new Error(item);
  const { coil, coilTemperature, ratedAt } = of.relayTypes[one.relay.type]!;
  return (coil * (234.5 + coilTemperature)) / (234.5 + ratedAt);
}

describe('independent: a divider of coils by hand', () => {
  // Key off, the fuse of the front box out. The light switch is open, and pulls three coils: two of the front box, one
  // of the rear box. Current runs from the rear box through its coil, back through the other two, and through a
  // resistance on the front box to ground.
  const text = sandpiperText.replace(
    /winch control:\n(.*)load: \{ kind: constant current, current: 2 A \}(.*)on: \[winching\]/,
    'winch control:\n$1load: { kind: resistance, resistance: 40 Ω }$2on: [key off, accessory, ignition, cranking, idle, road, winching]',
  );
  const changed = read(text);
  const other = planLoom(changed);
  it('has the volts of the divider', () => {
    const found = sneak(other, 'fuse of feeder front box', 'loads')!;
    expect(text).not.toBe(sandpiperText);
    const front = 1 / (1 / coilOhm(changed, 'headlamp left dipped') + 1 / coilOhm(changed, 'headlamp right dipped'));
    const rearV = other.states.find(({ name }) => name === found.state)!.nodes['box rear box']!;
    const volts = (rearV * 40) / (40 + front + coilOhm(changed, 'trailer socket lamps'));
    const box = found.points.find(({ node }) => node === 'box front box')!;
    // The wires of coils are left out by hand: half an ohm in two hundred.
    expect(Math.abs(box.voltageV / volts - 1)).toBeLessThan(0.01);
    expect(found.path[0]).toBe('coil trailer socket lamps');
    expect(found.path[1]).toMatch(/^coil headlamp (left|right) dipped$/);
    expect(found.states).toContain('key off');
  });
  it('finds nothing where the light switch is closed: the common point is at ground', () => {
    expect(sneak(other, 'fuse of feeder front box', 'loads')!.states).not.toContain('night and rain');
  });
});

describe('what stays alive', () => {
  it('comes through coils of one switch, and no box is fed back once no switch pulls coils of two boxes', () => {
    const alone = sandpiperText.replace(
      /(trailer socket lamps:\n.*control: \{ switch: )light switch/,
      '$1compressor switch',
    );
    const other = planLoom(read(alone));
    expect(sneak(plan, 'fuse of feeder front box', 'loads')).toBeDefined();
    expect(sneak(other, 'fuse of feeder front box', 'loads')).toBeUndefined();
    for (const { fault, by, path } of [...plan.sneaks, ...other.sneaks]) {
      if (by === 'wire') continue;
      const switches = path.map((name) => {
        const item = loom.items[name.replace(/^coil /, '')];
        if (item?.kind !== 'load' || item.relay === undefined || !('switch' in item.relay.control)) return name;
        return name === 'coil trailer socket lamps' ? 'of its own file' : item.relay.control.switch;
      });
      expect(path.length, fault).toBe(2);
      expect(new Set(switches.filter((name) => name !== 'of its own file')).size, fault).toBe(1);
    }
  });
  it('is both ends of a cable that has a battery at each', () => {
    const closed = Object.keys(loom.states)
      .filter((name) => loom.states[name]!.isolator === 'closed')
      .sort();
    for (const fault of [
      'fuse of isolator starter',
      'fuse of isolator service',
      'battery starter',
      'battery service',
      'isolator',
    ]) {
      expect([...sneak(plan, fault, 'wire')!.states].sort(), fault).toEqual(closed);
    }
    const link = sneak(planLoom(looped), 'fuse of link bank', 'wire')!;
    expect(link.states.length).toBe(Object.keys(looped.states).length);
  });
  it('has the volts of the battery that is left, where the other is cut off', () => {
    for (const [fault, point, left] of [
      ['fuse of isolator starter', 'isolator starter behind its fuse', 'service'],
      ['fuse of isolator service', 'isolator service behind its fuse', 'starter'],
      ['battery service', 'battery service +', 'starter'],
    ] as const) {
      const { state, points } = sneak(plan, fault, 'wire')!;
      const at = points.find(({ node }) => node === point)!;
      expect(at.voltageV, fault).toBeCloseTo(
        plan.states.find(({ name }) => name === state)!.nodes[`battery ${left} +`]!,
        9,
      );
    }
  });
  it('is what lies on either side of an open isolator, each by its own battery', () => {
    const { opened, fedFrom, points } = sneak(plan, 'isolator', 'wire')!;
    expect([opened, fedFrom]).toEqual(['contact', 'battery service and battery starter']);
    const nodes = points.map(({ node }) => node);
    expect(nodes).toEqual(expect.arrayContaining(['box front box', 'box rear box']));
    expect(nodes.filter((name) => name.endsWith('at the isolator')).length).toBe(2);
  });
  it('comes back behind a channel that is off, and behind no other contact of this file', () => {
    // The rear box behind an output of the power module: its coil and those of the front box hang on one switch.
    const behind = read(
      sandpiperText
        .replace(
          /(rear box:\n.*\n\s+from: )\{ battery: service \}\n.*protection:.*\n/,
          '$1{ controller: power module, channel: A1 }\n',
        )
        .replace(
          'from: { controller: power module, channel: A1 }, return',
          'from: { box: front box, position: 20 }, return',
        ),
    );
    const other = planLoom(behind);
    const found = sneak(other, 'channel power module A1', 'loads')!;
    expect(found.points.map(({ node }) => node)).toContain('box rear box');
    expect(found.path).toContain('coil trailer socket lamps');
    const finding = other.findings.find(({ about }) => about.name === 'channel power module A1')!;
    expect(finding.message).toMatch(/^With channel power module A1 open, box rear box/);
    expect(
      other.sneaks
        .filter(({ opened }) => opened === 'contact')
        .map(({ fault }) => fault)
        .sort(),
    ).toEqual(['channel power module A1', 'isolator']);
  });
  it('is a finding where a whole box is fed back', () => {
    const found = plan.findings.filter(({ rule }) => rule === 'sneak-path');
    const warned = found.filter(({ severity }) => severity === 'warn').map(({ about }) => about.name);
    expect(warned).toContain('fuse of feeder front box');
    expect(found.every(({ cure }) => cure !== null)).toBe(true);
  });
});

describe('what is alive in a state', () => {
  it('has the volts of the plan where a load is on', () => {
    plan.states.forEach(({ nodes }, s) => {
      for (const { circuit, voltsV } of plan.alive) {
        const volts = nodes[`${circuit} +`];
        if (volts !== undefined) expect(voltsV[s], circuit).toBeCloseTo(volts, 9);
      }
    });
  });
  it('is dead behind an open contact, and alive where there is none', () => {
    for (const { circuit, voltsV } of plan.alive) {
      const item = loom.items[circuit];
      if (item?.kind !== 'load') continue;
      const contact = item.relay !== undefined || item.switch !== undefined || 'controller' in item.from;
      plan.states.forEach(({ name }, s) => {
        expect(voltsV[s] === null, `${circuit} in ${name}`).toBe(contact && !item.on.includes(name));
      });
    }
  });
});
