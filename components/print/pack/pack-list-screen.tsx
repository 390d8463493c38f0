'use client'

import { ListBody } from '#components/print/list/list-body.tsx'
import { PlanPaper, PlanPaperScreen, type PlanShown } from '#components/print/list/plan-paper.tsx'
import { type PaperWords, usePaperWords } from '#components/print/words.tsx'
import { type AskedSection, listPages } from '#lib/paper/page/list-layout.ts'
import type { Paper } from '#lib/paper/page/papers.ts'
import { PACK_GROUPS, type PackItem } from '#lib/rooms/prep/facts/pack-list.ts'
import { packOf } from '#lib/rooms/prep/facts/pack-now.ts'
import { nameIn } from '#lib/station/name-in.ts'

const SHARES = [0.08, 0.64, 0.28] as const

const sectionsOf = (
  { pack: words }: PaperWords,
  items: readonly PackItem[],
  name: (id: string) => string,
): readonly AskedSection[] =>
  PACK_GROUPS.flatMap((group) => {
    const own = items.filter((one) => one.group === group)
    if (own.length === 0) return []
    const title = words.groups[group]
    const rules = new Set(own.map((item) => words.rule(item, name)))
    // Where all of them have one rule, it stands once.
    const [note = ''] = rules.size === 1 && own.length > 1 ? rules : []
    return [
      {
        ...{ title, again: words.again(title), note },
        rows: own.map((item) => ({
          ...{ id: item.id, isTicked: true, drawing: 0, blanks: [] },
          cells: [
            [{ text: String(item.count), pt: 12, weight: 'bold' as const }],
            [{ text: words.thing(item, name), pt: 11.5, lines: 2 }],
            [{ text: note === '' ? words.rule(item, name) : '', pt: 8.5, lines: 3 }],
          ],
        })),
      },
    ]
  })

function Sheet({ shown }: { readonly shown: PlanShown }) {
  const words = usePaperWords()
  const { state, plan } = shown
  const { columns } = words.pack
  const sections = sectionsOf(words, packOf(state) ?? [], nameIn(state.station))
  const make = (paper: Paper) => ({
    title: words.pack.title,
    sub: words.prep.sub(plan.on, plan.doorsOpen, state.expected),
    signed: [words.pack.packedBy],
    foot: words.pack.foot,
    bodies: listPages(paper, {
      ...{ shares: SHARES, sections, lead: 0 },
      headings: [columns.count, columns.what, columns.rule],
    }).map((page, at) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
      <ListBody key={at} page={page} />
    )),
  })
  return <PlanPaper shown={shown} make={make} />
}

/** All that goes to the counter, printed from the browser. */
export function PackListScreen() {
  return (
    <PlanPaperScreen
      titleOf={(words) => words.pack.title}
      render={(shown) => <Sheet shown={shown} />}
    />
  )
}
