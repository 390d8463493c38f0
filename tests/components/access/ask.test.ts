import { expect, test } from 'vitest'
import { withPage } from '#components/access/ask.ts'

test('what is asked says its own station once, and the house of its page', () => {
  const page = '?house=demo&station=potato-bar&recipe=chili'
  expect(withPage('/access', '')).toBe('/access')
  expect(withPage('/access', '?house=demo')).toBe('/access?house=demo')
  const asked = new URLSearchParams(withPage('/menu/draft?station=bowl&after=3', page).slice(12))
  expect(asked.getAll('station')).toEqual(['bowl'])
  expect(asked.get('after')).toBe('3')
  expect(asked.get('house')).toBe('demo')
})
