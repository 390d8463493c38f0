import { expect, it } from 'vitest'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { handedOverWords } from '#lib/rooms/food/words/handed-over-en.ts'

it('[P72] guests who had bad food are told with what was wrong with it', () => {
  const { title } = handedOverWords
  expect(title('Herb chicken', 'food', 'out-of-limits')).toBe(
    'Guests had herb chicken out of its limits',
  )
  expect(title('Herb chicken', 'food', 'reading-missed')).toBe(
    'Guests had herb chicken that wasn’t read',
  )
})

it('[P72] what may be done names the place, what was read, and what follows', () => {
  expect(formWords.resolveTitle('Tuna salad', 'backup')).toBe(
    'Don’t serve the tuna salad back-up pan',
  )
  expect(formWords.resolveRead('47 °F', '2:01', 'middle-stirred', '41 °F or below')).toBe(
    'Read 47 °F at 2:01, stirred, in the middle. Limit: 41 °F or below.',
  )
  expect(formWords.resolveThen.discard(['1A', '2B'], 16)).toContain(
    '1-\u2060A and 2-\u2060B are made again',
  )
  expect(formWords.resolveThen['time-only'](['1A'])).toContain('1-\u2060A goes on')
})
