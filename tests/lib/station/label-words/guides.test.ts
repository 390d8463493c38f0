import { describe, expect, test } from 'vitest'
import { readList } from '#lib/station/label-words/read-list.ts'
import { everyBreak, PRINTED } from '#tests/lib/station/label-words/printed.ts'
import {
  type GuideWord,
  NAMING,
  NAMING_NOTHING,
  NAMING_SOMETIMES,
} from '#tests/lib/station/label-words/reading-guides.ts'

const said = ({ word, codes }: GuideWord, print: (word: string) => string) =>
  readList(`Water, ${print(word)}, salt`, 'us-9').filter(({ code }) => codes.includes(code))

describe.each(Object.entries(PRINTED))('a word that is printed %s', (_, print) => {
  test('[LW1] is marked where it names an allergen, as contained', () => {
    const missed = NAMING.filter(
      (one) => !said(one, print).some(({ proposes }) => proposes === 'contains'),
    )
    expect(missed.map(({ word }) => print(word))).toEqual([])
  })

  test('[LW2] is asked where it holds an allergen sometimes, and never contained', () => {
    const missed = NAMING_SOMETIMES.filter(
      (one) => !said(one, print).some(({ proposes }) => proposes === 'ask'),
    )
    const decided = NAMING_SOMETIMES.filter((one) =>
      said(one, print).some(({ proposes }) => proposes !== 'ask'),
    )
    expect(missed.map(({ word }) => print(word))).toEqual([])
    expect(decided.map(({ word }) => print(word))).toEqual([])
  })

  test('[LW3] isn’t marked where it only sounds like an allergen', () => {
    const marked = NAMING_NOTHING.filter((one) => said(one, print).length > 0)
    expect(marked.map(({ word }) => print(word))).toEqual([])
  })
})

test('[LW1] [LW2] [LW3] it makes no difference where a hyphen breaks a word', () => {
  const as = (one: GuideWord, proposes: string | undefined) =>
    everyBreak(one.word).filter((broken) => {
      const all = said(one, () => broken).map((mark) => mark.proposes)
      return proposes === undefined ? all.length > 0 : !all.some((each) => each === proposes)
    })
  expect(NAMING.flatMap((one) => as(one, 'contains'))).toEqual([])
  expect(NAMING_SOMETIMES.flatMap((one) => as(one, 'ask'))).toEqual([])
  expect(NAMING_NOTHING.flatMap((one) => as(one, undefined))).toEqual([])
})

test('the table is that of the guides: no row is empty, and what both columns have is known', () => {
  expect(NAMING.length).toBeGreaterThan(170)
  expect(NAMING_SOMETIMES.length).toBeGreaterThan(35)
  expect(NAMING_NOTHING.length).toBeGreaterThan(20)
  const key = ({ word, codes }: GuideWord) => `${word} ${codes[0] ?? ''}`
  const named = new Set(NAMING.map(key))
  expect(NAMING_SOMETIMES.map(key).filter((one) => named.has(one))).toEqual([])
})

test('[LW3] a line that ends between two such words is asked: they may be two ingredients', () => {
  for (const list of ['peanut\nbutter', 'cocoa\nbutter', 'coconut\nmilk', 'rice\nflour']) {
    const word = list.split('\n')[1] ?? ''
    const asked = readList(list, 'us-9').filter((one) => one.word === word)
    expect(asked.length, list).toBeGreaterThan(0)
    expect(
      asked.map(({ proposes }) => proposes),
      list,
    ).toEqual(asked.map(() => 'ask'))
  }
})
