/** What the Larder screen says. */
import type { LotBound } from '#lib/larder/lot.ts'

const BOUND: Readonly<Record<LotBound, string>> = {
  date: 'Past its last day: throw it out',
  'cooling-missed': 'Not cooled in time: throw it out',
  'out-of-limits': 'Read too warm: throw it out',
}

export const larderScreen = {
  title: 'Larder',
  what: 'Food that was set aside, what goes first on the left. Local code and the person in charge decide.',
  empty: 'Nothing is in the larder. What a service sets aside as it closes comes here.',
  notLead: 'Only a device that leads sees the larder. The lead lets one in on Devices.',
  lost: 'The laptop doesn’t answer. What is drawn may be old.',
  looking: 'Looking …',
  shelves: {
    bound: 'To be thrown out',
    cooling: 'Cools',
    cold: 'Cold',
    dry: 'Dry',
    frozen: 'Freezer',
  },
  bound: (why: LotBound) => BOUND[why],
  dayAndTime: (day: string, time: string) => `${day}, ${time}`,
  lastDay: (day: string) => `to ${day}`,
  frozenFor: (days: number) => (days === 1 ? '1 day once thawed' : `${days} days once thawed`),
  stage: (stage: 1 | 2, time: string) =>
    stage === 1 ? `70 °F or below by ${time}` : `41 °F or below by ${time}`,
  reading: (time: string) => `Read it by ${time}`,
  unread: 'Nobody read it for a day: read it first',
  stays: (time: string) => `Somebody is there until ${time}`,
  nobody: 'Nobody said to be there by then',
  first: 'goes first',
  jumped:
    'The laptop’s clock jumped. Nothing is taken, and nothing counts as late, until somebody says that it is right.',
  clockIsRight: (time: string) => `It is ${time} now: the clock is right`,
  slip: (name: string) => `Another class took ${name}.`,
  isBack: 'It is here after all',
  jobs: 'What is done with it',
  back: 'Back',
  toFirstPage: 'First page',
  read: 'Record the reading',
  degrees: 'Degrees, middle of the food',
  probe: 'Name on the probe',
  scale: { F: '°F', C: '°C' },
  initials: 'Initials',
  needsInitials: 'with initials',
  tookIt: 'Another class took it',
  freeze: 'Into the freezer',
  thaw: 'Out of the freezer, to thaw',
  throwOut: 'Thrown out',
  done: 'Recorded.',
  notDone: 'That wasn’t taken. Look at the shelf again.',
  refused: {
    'needs-initials': 'Say whose initials.',
    'lot-reading-lacks': 'A reading needs the name of the probe and initials.',
    'lot-reading-asked': 'That temperature can’t be right. Check the number and the scale.',
    'lot-cannot-freeze': 'It can’t be frozen: it isn’t cold, or none of its days is left.',
    'lot-no-slip': 'That is too long ago. What came back is thrown out.',
  } as Readonly<Record<string, string>>,
} as const
