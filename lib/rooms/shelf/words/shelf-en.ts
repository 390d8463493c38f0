/** What is said of the hot or cold shelf on which made food waits. */
import { record } from '#lib/rooms/food/words/reading-en.ts'
import type { DutyWords } from '#lib/words/duty-words.ts'

const title: DutyWords['title'] = {
  'reading-due': () => 'Read the shelf of made food',
  'reading-missed': () => 'The shelf of made food wasn’t read',
  'out-of-limits': () => 'The shelf of made food is out of its limits',
}

const why: DutyWords['why'] = {
  'reading-due': (at) => `By ${at}. Without it made food there counts as at room temperature.`,
  'reading-missed': () =>
    'Until somebody reads it, made food there counts as at room temperature: 4 hours at most.',
  'out-of-limits': () =>
    'What is on the shelf is held. Call the person in charge: local code and they decide.',
}

const short: DutyWords['short'] = {
  'reading-due': (at) => `Read the shelf by ${at}`,
  'reading-missed': () => 'The shelf: not read',
  'out-of-limits': () => 'The shelf: out of limits, held',
}

export const shelfWords = {
  duty: { title, why, short, button: {} },
  title: 'The shelf of made food',
  how: 'Probe what has been on it longest, in the middle of the food.',
  held: { hot: 'It is a hot shelf.', cold: 'It is a cold shelf.' },
  unread:
    'Nobody has read it in time: made food there has 4 hours from when it was last in limits.',
  readOut: (read: string | null) => `${record(read)}: what is on it is held`,
  done: (read: string) => `The shelf: ${read}`,
  out: 'It was read out of its limits: what was on it is held.',
  way: {
    discard: 'Throw out what was on it',
    'time-only': 'Start a 4-hour clock, from when it was last in limits',
  },
  decided: 'The shelf: decided',
  thenRead: 'Then read it again: until then it counts as at room temperature.',
} as const
