/** The cautions that pages, sheets and the command print, each written once. */
export const cautions = {
  'local-code': {
    title: 'Codes and practice',
    text: 'This is arithmetic, not approval. Local codes, the rules of your sport and a licensed practitioner decide.',
  },
  battery: {
    title: 'Batteries',
    text: 'A battery gives off hydrogen and can weld a spanner. Take the negative off first and put it back last.',
  },
  fuel: {
    title: 'Fuel and vapour',
    text: 'Fuel vapour lights from a spark that you do not see. Work with the tank closed, the room aired and the battery off.',
  },
  'stored-heat': {
    title: 'Hot cable',
    text: 'A cable that has carried a short stays hot, and may be hotter inside its cover than it feels.',
  },
  restraint: {
    title: 'Airbags and brakes',
    text: 'Leave airbag, belt-tensioner and brake-hydraulic wiring alone. It is not a subject of this handbook.',
  },
  'prove-slowly': {
    title: 'Prove it at walking pace',
    text: 'Brake lamps, throttle return and steering assistance are proved standing still, then at walking pace, before any road.',
  },
  'insulation-tester': {
    title: 'Insulation testers',
    text: 'Never put an insulation tester on wiring with electronics connected: it destroys what it tests.',
  },
  scald: {
    title: 'Hot water',
    text: 'Boiling water scalds, and a hot cooling system bursts open. Let it cool before a cap or a sensor comes out.',
  },
  'fan-starts': {
    title: 'Fans start by themselves',
    text: 'A fan may start with the engine off and the key out. Keep hands, sleeves and tools away, or pull its fuse first.',
  },
  'stop-the-engine': {
    title: 'A warning is no protection',
    text: 'A lamp saves nothing. When oil pressure or coolant warns, stop the engine first and find out why afterwards.',
  },
  throttle: {
    title: 'An unproved throttle',
    text: 'Prove every fault with the engine off first, then at walking pace with a second way to stop it. Return springs stay. Local law decides.',
  },
  isolator: {
    title: 'Isolator',
    text: 'An isolator must stop the engine and everything else. Where a rule or a sport asks for one, its text decides.',
  },
} as const satisfies Record<string, { title: string; text: string }>;

export type CautionKey = keyof typeof cautions;
