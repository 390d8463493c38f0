import { on, type View } from './view.ts'

const handOver = on('/hand-over', 'hand-over')

export const handOverViews: readonly View[] = [
  handOver('empty', 'quiet', 'Nothing to hand over'),
  handOver('shelf', 'rush', 'Hand over 2-A', [], { main: [/^Hand over 2-A/] }),
  handOver('nine on the shelf', 'nine-on-shelf', 'Hand over 1-A', [], {
    main: [/^Hand over 1-A/],
  }),
  handOver('fifteen on the shelf', 'many-on-shelf', 'Hand over 1-A', [], {
    main: [/^Hand over 1-A/],
  }),
  handOver('more than fifteen', 'more-than-fifteen', 'Hand over 1-A', [], {
    main: [/^Hand over 1-A/],
  }),
  handOver('three figures', 'three-figures', 'Hand over 125-A', [], {
    main: [/^Hand over 125-A/],
  }),
  handOver('kept apart, picked', 'rush', 'Ask, then hand over 3-A', [/^3-A/, 'Back to the shelf'], {
    main: [/^Ask, then/],
  }),
  handOver('ask', 'rush', 'What did you ask us to leave out?', [/^3-A/], {
    main: [/^They answered/],
  }),
  handOver('ask, compared', 'rush', 'KEEP FROM MILK', [/^3-A/, /^They answered/], {
    main: [/^Same as the mark/],
  }),
  handOver('ask, differs', 'rush', 'It stays here', [/^3-A/, /^They answered/, 'Not the same'], {
    main: [/^Back to the shelf/],
  }),
  handOver('not paid, asked', 'nine-on-shelf', 'pay later', [/^2-A/, /^Hand over 2-A/], {
    main: [/^Paid now/, /^Hand over, pay later/],
  }),
  handOver('not paid, on the list', 'unpaid', 'Given out, not paid', [/^2 not paid/], {
    main: [/^Ticket 2: paid now/],
  }),
  handOver('handed over', 'unpaid', 'Back to the shelf', [/^Handed over/]),
  handOver('to find', 'to-find', 'FIND THE GUEST', [], { main: [/^1-A is found/, /^I threw 2-A/] }),
  handOver('to find, asked', 'to-find', 'did you find the guest', [/^1-A is found/], {
    main: [/^Found: food/, /^Found: told/, /^Not found yet/],
  }),
  handOver('to be thrown out', 'past', 'To be thrown out', [], { main: [/^I threw 1-A out/] }),
  handOver('wrong', 'rush', '2-A: what is the problem?', ['Problem with 2-A'], {
    main: [/^Make it again/],
  }),
  handOver('wrong, sure', 'rush', 'Yes, make 2-A again', ['Problem with 2-A', /^Make it again/], {
    main: [/^Yes, make 2-A again/],
  }),
  handOver(
    'not sure which is which',
    'rush',
    'Which of these could be 2-A?',
    ['Problem with 2-A', /^Not sure which/, /^2-B/],
    { main: [/^Throw out 2 and make again: 2-A, 2-B/] },
  ),
  handOver(
    'not sure which of many',
    'many-on-shelf',
    'Which of these could be 1-A?',
    ['Problem with 1-A', /^Not sure which/],
    { main: [/^Throw out \d+ and make again/] },
  ),
  handOver('closed', 'closed', 'This service is closed'),
]
