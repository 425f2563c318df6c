/** Processor time that this process has used, in ms: unlike the clock on the wall it does not wait for other programs. */
export const cpuMs = (): number => process.cpuUsage().user / 1000;
