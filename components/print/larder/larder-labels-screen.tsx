'use client'

import { useSearchParams } from 'next/navigation'
import { Suspense, useMemo } from 'react'
import { useAccess } from '#components/access/use-access.ts'
import { LabelsBoard } from '#components/print/labels/labels-board.tsx'
import { PaperWordsProvider, usePaperWords } from '#components/print/words.tsx'
import { useSheet } from '#components/sheet/use-sheet.ts'
import type { LarderShown } from '#lib/larder/shelf-view.ts'
import { hasLabel, lotFacts } from '#lib/paper/labels/lot-facts.ts'
import { paperOf } from '#lib/paper/page/papers.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { limitsOf } from '#lib/service/food-limits.ts'

const LOOK_EVERY_MS = 10_000

function LarderLabels() {
  const { frame, labels: words, larder, setUp } = usePaperWords()
  const only = useSearchParams().get('lot')
  const { seen, refused } = useAccess<LarderShown>('/larder/now', LOOK_EVERY_MS)
  const { answer } = useSheet()
  const facts = answer?.facts ?? null
  const isDemo = answer?.demo === true || facts?.station.invented === true
  const minute = Math.floor((seen?.now ?? 0) / MINUTE_MS) * MINUTE_MS
  const groups = useMemo(() => {
    if (seen === null || facts === null) return []
    const { station, servedOn } = facts
    const labels = seen.lots.filter(hasLabel).map((lot) => {
      const where = {
        timeZone: lot.timeZone,
        scale: lot.scale,
        days: limitsOf(station).dateMark.days,
        isDemo,
      }
      const texts = larder.texts(lotFacts(station, lot, minute, servedOn), station.name, where)
      return {
        id: texts.id,
        name: lot.name,
        texts,
        copies: 1,
        isUsual: only === null || only === lot.lot,
      }
    })
    return labels.length === 0 ? [] : [{ id: 'lots', title: larder.lots, labels }]
  }, [seen, facts, larder, minute, isDemo, only])
  const note =
    refused === 'not-joined' || refused === 'not-yours'
      ? words.notLead
      : refused !== null
        ? frame.lost
        : seen === null || answer === null
          ? frame.loading
          : facts === null
            ? frame.noStation
            : groups.length === 0
              ? larder.empty
              : null
  return (
    <LabelsBoard
      title={larder.title}
      groups={groups}
      head={
        facts === null
          ? []
          : [larder.title, facts.station.name, setUp.printed(minute, facts.station.timeZone)]
      }
      mark={facts === null ? '' : words.mark(null, minute, facts.station.timeZone)}
      usual={paperOf(facts?.station.locale ?? 'en-US')}
      links={<a href="/larder">{words.toLarder}</a>}
      note={note}
    />
  )
}

/** Labels of what stands in the larder, printed from the browser. */
export function LarderLabelsScreen() {
  return (
    <PaperWordsProvider>
      <Suspense fallback={null}>
        <LarderLabels />
      </Suspense>
    </PaperWordsProvider>
  )
}
