/** Every command, by the name that people use for the act. */
export const COMMAND_TYPES = [
  'open',
  'load',
  'changePan',
  'correct',
  'send',
  'change',
  'cancel',
  'acknowledge',
  'start',
  'finish',
  'takeBack',
  'remake',
  'handOver',
  'pay',
  'stopSelling',
  'resumeSelling',
  'confirmClock',
  'close',
] as const

export type CommandType = (typeof COMMAND_TYPES)[number]
