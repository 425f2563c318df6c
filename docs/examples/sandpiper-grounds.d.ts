import type { LimitedBranch, Network, NetworkBranch, NetworkLoad, WatchedGround } from 'loomwright';
/** What was laid to carry current back. */
export declare const straps: readonly NetworkBranch[];
/** What was not, and would carry it all the same. */
export declare const strays: readonly NetworkBranch[];
/** Loads that can be switched on; the two controllers are always on. */
export declare const loads: readonly NetworkLoad[];
/** Each sensor is grounded where it sits, and read against the ground of its controller. */
export declare const sensors: readonly WatchedGround[];
export declare const limits: readonly LimitedBranch[];
/** Sandpiper with these loads on and these straps off. */
export declare function sandpiper(on: readonly string[], lost: readonly string[]): Network;
