/** What is said around every paper, on the screen and on its pages. */

import type { Paper } from '#lib/paper/page/papers.ts'
import { formOf } from '#lib/words/counted-en.ts'

export const frameEn = {
  product: 'Level Scoop',
  print: 'Print',
  /** Of the browser's own window. */
  how: 'In the print window: margins none or default, scale 100%, headers and footers off.',
  size: 'Paper',
  papers: { letter: 'Letter', a4: 'A4' } satisfies Record<Paper, string>,
  page: (page: number, of: number) => `page ${page} of ${of}`,
  pages: (count: number) => `${count} ${formOf(count, 'page', 'pages')}`,
  toSetUp: 'To the set-up',
  toPublished: 'What is published',
  toDraft: 'The draft instead',
  loading: 'Asking the laptop …',
  lost: 'No answer from the laptop. What is shown may be old.',
  never: 'No answer from the laptop.',
  noStation: 'Nothing is published here yet.',
  notLead: 'A draft is shown to the lead and to the person in charge.',
  notWhole: (count: number) =>
    `The draft can’t be printed yet: ${count} ${formOf(count, 'thing is', 'things are')} wrong with it. The set-up says which.`,
} as const
