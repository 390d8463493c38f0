/** The set-up's frame in English: stations, sections, what is saved, what is missing. */

import { counted, list } from '#lib/words/counted-en.ts'

type Section = 'line' | 'items' | 'touch' | 'house' | 'publish'

export const menuScreenEn = {
  title: 'Set up a station',
  connecting: 'Looking …',
  lost: 'The server doesn’t answer.',
  noSuch: 'No station of this house is called so.',
  again: 'Try again',
  notYours: 'Stations are set up on a device of the lead or of the person in charge.',
  notJoined: 'Sign on as the lead or as the person in charge first.',
  signOn: 'Sign on',
  toFirst: 'First page',
  toStations: 'All stations',
  close: 'Close',
  parts: 'Parts of this panel',
  notSaid: 'not said yet',
  helpHere: 'Tap a field: what it is for is said here.',
  sections: {
    line: 'The line',
    items: 'Items',
    touch: 'What touches what',
    house: 'The house',
    publish: 'Publish',
  } satisfies Record<Section, string>,

  next: 'What is next',
  tapPan: 'Tap a pan to say what is in it. Drag it, or move it with the arrow keys.',
  tapBare: 'Tap a + in a well to put a pan in.',
  toItems: 'Next: the items',
  onPaper: 'The line on paper',
  toPublish: 'Next: publish',

  saved: 'Saved',
  saving: 'Saving …',
  notSaved: 'Not saved yet: the server doesn’t answer. What you typed waits here.',
  pansSet: (set: number, all: number) =>
    all === 0 ? 'no pan yet' : `${set} of ${counted(all, 'pan is', 'pans are')} set`,
  draft: 'being set up',
  published: (revision: number) => `revision ${revision}`,
  changedSince: (revision: number) => `changed since revision ${revision}`,
  open: 'A service is open: it stays on its own line, and takes labels at once.',

  clash: (who: readonly string[]) => `Somebody else changed ${list(who, 'and')} meanwhile.`,
  clashWhat: 'What you typed is still here. Which one holds?',
  mine: 'Mine',
  theirs: 'Theirs',
  stations: 'Your stations',
  begin: 'Begin a station',
  beginFrom: 'Begin from',
  fromNothing: 'From nothing',
  fromNothingWhy: 'guided, in the line’s order',
  fromDemo: 'A copy of the demo',
  fromSet: 'a template, invented; its labels aren’t read',
  fromStation: (name: string) => `A copy of ${name}`,
  copyWhy: 'labels stay the house’s',
  demoWhy: 'invented; its labels aren’t read',
  stationName: 'What is it called?',
  lacksName: 'Name is missing',
  beginIt: 'Begin',
  openStation: (name: string) => `Set up ${name}`,
  never: 'not published yet',
  isOpen: 'a service is open',
  toCarry: 'Carry it to another laptop, or take one in',

  missing: {
    firstOrder: 'For a first order',
    keepApart: 'To keep apart',
    printing: 'To plan and weigh',
  },
  missingShort: (count: number) => (count === 0 ? 'ready' : `${count} missing`),
  problems: (count: number) => counted(count, 'thing is wrong', 'things are wrong'),
} as const
