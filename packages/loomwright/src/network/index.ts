export type { Network, NetworkBranch, NetworkDiode, NetworkLoad, NetworkSource, NetworkSwitch } from './element.js';
