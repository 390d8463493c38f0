'use client'

import { useSearchParams } from 'next/navigation'
import { Suspense } from 'react'
import { PlainPaper } from '#components/print/list/plain-paper.tsx'
import { PaperWordsProvider, usePaperWords } from '#components/print/words.tsx'
import { useSheet } from '#components/sheet/use-sheet.ts'
import { paperOf } from '#lib/paper/page/papers.ts'
import { type Sheet, type SheetFacts, sheetOf } from '#lib/rooms/care/views/allergen-sheet.ts'

/** null where the document is damaged. */
const made = (facts: SheetFacts): Sheet | null => {
  try {
    return sheetOf(facts)
  } catch {
    return null
  }
}

function AllergenPaper() {
  const words = usePaperWords()
  const { answer, isLost } = useSheet()
  const station = useSearchParams().get('station')
  const facts = answer?.facts ?? null
  const sheet = facts && made(facts)
  const note = isLost
    ? answer
      ? words.frame.lost
      : words.frame.never
    : answer === null
      ? words.frame.loading
      : facts === null
        ? words.frame.noStation
        : sheet === null
          ? words.allergens.damaged
          : null
  const isDemo = answer?.demo === true || sheet?.invented === true
  return (
    <PlainPaper
      title={words.allergens.title}
      station={sheet?.station ?? ''}
      facts={sheet && answer ? words.allergens.facts(sheet, answer.at) : []}
      demo={isDemo ? words.setUp.demo : null}
      foot={words.allergens.foot}
      usual={paperOf(facts?.station.locale ?? 'en-US')}
      shares={words.allergens.shares}
      headings={words.allergens.headings}
      sections={sheet && words.allergens.sections(sheet)}
      links={
        <a href={station === null ? '/sheet' : `/sheet?station=${station}`}>
          {words.allergens.toSheet}
        </a>
      }
      note={note}
    />
  )
}

/** What /sheet says, food by food, printed from the browser. */
export function AllergenPaperScreen() {
  return (
    <PaperWordsProvider>
      <Suspense fallback={null}>
        <AllergenPaper />
      </Suspense>
    </PaperWordsProvider>
  )
}
