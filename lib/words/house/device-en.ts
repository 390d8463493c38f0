/** What a screen says of the device it runs on: sound, staying awake, true size. */
export const deviceEn = {
  sound: {
    on: 'Sound on',
    off: 'Sound off',
    locked: 'Tap once for sound',
    none: 'No sound here',
  },
  mayDim: 'This screen may go dark. Set the tablet to stay on.',
  calibrate: 'Set this screen’s true size',
  calibrateHow: (side: 'long' | 'short') =>
    `Hold a bank card against the glass, its ${side} side along the bar. Change the bar until both are as long.`,
  bar: 'As long as the card',
  shorter: 'Shorter',
  longer: 'Longer',
  use: 'That is as long',
  forget: 'Back to a 10-inch tablet',
  set: (mm: string) => `Set: ${mm} pixels are one millimetre here.`,
  notSet: (mm: string) => `Not set: counted as a 10-inch tablet (${mm} pixels a millimetre).`,
} as const
