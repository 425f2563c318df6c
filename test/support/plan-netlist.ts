// A state of a plan as a netlist of the general circuit simulator.
import type { LoomPlan } from '@loomwright/harness';

/**
 * A plan's state as a netlist, and the simulator's name of each node. Ways of the grounds and loads that are `lost` are
 * left out; what would then hang in the air is tied to 0 V by 10 TΩ.
 */
export function netlist(
  of: LoomPlan,
  state: string,
  lost: readonly string[] = [],
  afloat: readonly string[] = [],
): { text: string; names: Map<string, string> } {
  const names = new Map<string, string>();
  const root = of.grounds.find(({ by }) => by === 'root')!.name;
  const node = (name: string): string => {
    if (name === `ground ${root}`) return '0';
    if (!names.has(name)) names.set(name, `n${names.size + 1}`);
    return names.get(name)!;
  };
  const lines: string[] = [];
  let count = 0;
  const chain = (from: string, to: string, ohms: readonly number[]): void => {
    let here = node(from);
    ohms.forEach((ohm, i) => {
      const next = i === ohms.length - 1 ? node(to) : `m${++count}`;
      lines.push(`R${++count} ${here} ${next} ${Math.max(ohm, 1e-12)}`);
      here = next;
    });
  };
  const { volts, atRest = {} } = of.loom.states[state]!;
  for (const [name, supplyV] of Object.entries(volts)) {
    lines.push(`V${++count} ${node(`battery ${name} +`)} ${node(`battery ${name} −`)} ${supplyV}`);
  }
  for (const [name, restV] of Object.entries(atRest)) {
    const inner = `m${++count}`;
    lines.push(`V${++count} ${inner} ${node(`battery ${name} −`)} ${restV}`);
    lines.push(`R${++count} ${inner} ${node(`battery ${name} +`)} ${of.loom.supply.batteries[name]!.resistance}`);
  }
  for (const { name, circuit, from, to, resistanceOhm } of of.ways) {
    if (circuit === null && !lost.includes(name)) chain(from, to, [resistanceOhm]);
  }
  for (const name of afloat) lines.push(`R${++count} ${node(name)} 0 1e13`);
  for (const { nodes, path, name, kind, serves } of of.circuits) {
    if (nodes === null || lost.includes(name)) continue;
    const ohms = (side: string): number[] => path.filter((one) => one.side === side).map((one) => one.resistanceOhm);
    if (nodes.back === null || nodes.to === null) {
      chain(
        nodes.from,
        nodes.load,
        path.map((one) => one.resistanceOhm),
      );
      continue;
    }
    const item = of.loom.items[kind === 'coil' ? serves : name];
    const on = item?.kind === 'load' ? item.on : of.loom.controllers[name]!.on;
    if (!on.includes(state)) continue;
    if (nodes.load !== nodes.from) chain(nodes.from, nodes.load, ohms('out'));
    if (nodes.back !== nodes.to) chain(nodes.back, nodes.to, ohms('back'));
    const [a, b] = [node(nodes.load), node(nodes.back)];
    if (item?.kind !== 'load') lines.push(`I${++count} ${a} ${b} ${of.loom.controllers[name]!.ownCurrent}`);
    else if (kind === 'coil') {
      const { coil, coilTemperature, ratedAt } = of.loom.relayTypes[item.relay!.type]!;
      lines.push(`R${++count} ${a} ${b} ${(coil * (234.5 + coilTemperature)) / (234.5 + ratedAt)}`);
    } else if (item.load.kind === 'constant current') lines.push(`I${++count} ${a} ${b} ${item.load.current}`);
    else if (item.load.kind === 'resistance') lines.push(`R${++count} ${a} ${b} ${item.load.resistance}`);
    else if (item.load.kind === 'constant power') {
      lines.push(`B${++count} ${a} ${b} I=${item.load.power}/(V(${a})-V(${b}))`, `.nodeset V(${a})=12`);
    } else {
      // A motor of constant torque that may have lost its volts: below those of its stall it is its winding.
      const { windingResistance, ratedCurrent } = item.load;
      const volts = `(V(${a})-V(${b}))`;
      if (lost.length > 0) {
        const stall = windingResistance * ratedCurrent;
        lines.push(`B${++count} ${a} ${b} I=${volts}>${stall} ? ${ratedCurrent} : ${volts}/${windingResistance}`);
        continue;
      }
      // A motor of constant torque: its winding, and behind it what takes the rated current at any back-EMF.
      const inner = `m${++count}`;
      lines.push(
        `R${++count} ${a} ${inner} ${item.load.windingResistance}`,
        `I${++count} ${inner} ${b} ${item.load.ratedCurrent}`,
      );
    }
  }
  return { text: [...lines, '.options reltol=1e-10 abstol=1e-12 vntol=1e-12 gmin=1e-18', '.op'].join('\n'), names };
}
