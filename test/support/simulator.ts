// A general circuit simulator (ngspice in WebAssembly), to check against what shares no code with us.
import { Simulation } from 'eecircuit-engine';

let started: Promise<Simulation> | undefined;

/** Runs a netlist (without title and `.end`) and returns every vector by name, in the simulator's units. */
export async function simulate(netlist: string): Promise<Record<string, number[]>> {
  started ??= (async () => {
    const simulation = new Simulation();
    await simulation.start();
    return simulation;
  })();
  const simulation = await started;
  simulation.setNetList(`check\n${netlist}\n.end\n`);
  const result = await simulation.runSim();
  const vectors: Record<string, number[]> = {};
  for (const { name, values } of result.data) {
    vectors[name] = (values as readonly (number | { real: number })[]).map((v) => (typeof v === 'number' ? v : v.real));
  }
  return vectors;
}
