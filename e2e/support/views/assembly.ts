import { on, type View } from './view.ts'

const assembly = on('/assembly', 'assembly')
const MADE = { main: [/^Made and marked/] }

export const assemblyViews: readonly View[] = [
  assembly('idle', 'quiet', 'No builds waiting'),
  assembly('waiting', 'waiting', 'Start 1-A', [], { main: [/^Start 1-A/] }),
  assembly('making', 'rush', 'Made and marked', [], MADE),
  assembly('making, fullest', 'fullest', 'Made and marked', [], MADE),
  assembly('reading', 'reading', 'I read it aloud', [], { main: [/^I read it aloud/] }),
  assembly('waiting, kept apart', 'reading', 'Start 1-A', ['I read it aloud'], {
    main: [/^Start 1-A/],
  }),
  assembly('waiting, a label unread', 'unread', 'Start 1-A', ['I read it aloud'], {
    main: [/^Start 1-A/],
  }),
  assembly('making, kept apart', 'apart', 'Made and marked', [], MADE),
  assembly('making, most kept apart', 'all-apart', 'Made and marked', [], MADE),
  assembly('making, four kept apart', 'four-apart', 'Made and marked', [], MADE),
  assembly('waiting, leave out', 'diet', 'Start 1-A', [], { main: [/^Start 1-A/] }),
  assembly('waiting, short', 'short', 'Not enough', [], { main: [/^Make 2-A first/] }),
  assembly('stop', 'stopped', 'Was food in 1-A?', [], { main: [/^Yes/, /^No/] }),
  assembly('stop, some in it', 'stopped', 'can be sold again', [/^Herb chicken/, /^Sesame slaw/], {
    main: [/^Yes/, /^No/],
  }),
  assembly('stop, six changes', 'six-changes', 'Was food in 1-A?', [], {
    main: [/^Yes/, /^No/],
  }),
  assembly('waiting, another makes one', 'made elsewhere', 'being made at left', [], {
    main: [/^Start 2-A/],
  }),
  assembly('take over, asked', 'made elsewhere', 'Take over 1-A from left?', [/^Show 1-A/], {
    main: [/^Yes, make it here/, /^No, leave it at left/],
  }),
  assembly('reading, another is stopped', 'stopped elsewhere', 'left answers it', [], {
    main: [/^I read it aloud/],
  }),
  assembly('stop, made at another', 'stopped elsewhere', 'made at left', [/^Answer it here/], {
    main: [/^Yes/, /^No/],
  }),
  assembly('which screen', 'quiet', 'Where is this screen?', [/^This screen is/], {
    main: [/^Close/],
  }),
  assembly('stop, fullest', 'fullest, stopped', 'a lidded cup to put back', [], {
    main: [/^Yes/, /^No/],
  }),
  assembly('stop, thrown out whole', 'scoop in a kept-apart one', 'all of it is thrown out', [], {
    main: [/^Yes/, /^No/],
  }),
  assembly('stop, cancelled', 'cancelled', 'Cancelled.', [], { main: [/^Yes/, /^No/] }),
  assembly('take back', 'rush', 'Which one was a mistake?', ['Take back'], {
    main: [/^Take back 2-A/, /^Close/],
  }),
  assembly('take back, asked', 'rush', 'Was 3-A made?', ['Take back', /^Take back 3-A/], {
    main: [/^Yes/, /^No/, /^Close/],
  }),
  assembly('stop, told late', 'told-late', 'Was food in 1-A?', [], { main: [/^Yes/, /^No/] }),
  assembly('stop, not being made', 'told-waiting', '1-A isn’t being made', [], {
    main: [/^Seen/],
  }),
  assembly('stop, made', 'to-find', '2-A is thrown out', [], { main: [/^2-A is thrown out/] }),
  assembly('held', 'held', 'HELD'),
  assembly('soiled', 'soiled', 'went in', [], MADE),
  assembly('waiting, off sale', 'chicken-off-sale', 'Don’t serve the', [], {
    main: [/^Make 2-A first/],
  }),
  assembly('stop, off sale', 'chicken-off-sale, making', 'Was food in 1-A?', [], {
    main: [/^Yes/, /^No/],
  }),
  assembly('making, other scoop', 'other-scoop', 'stand-in scoop', [], MADE),
  assembly('stop, thrown out', 'thrown-out', 'Was food in 1-A?', [], { main: [/^Yes/, /^No/] }),
  assembly('wrong scoop', 'rush', 'Which pan did a wrong scoop go into?', ['Wrong scoop'], {
    main: [/^Close/],
  }),
  assembly('wrong scoop, whose', 'rush', 'which scoop went in?', ['Wrong scoop', 'Cheddar'], {
    main: [/^Close/],
  }),
  assembly('closed', 'closed', 'This service is closed'),
]
