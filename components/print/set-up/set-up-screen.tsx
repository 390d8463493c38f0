'use client'

import { useSearchParams } from 'next/navigation'
import { type ReactNode, Suspense, useState } from 'react'
import { useAccess } from '#components/access/use-access.ts'
import { PaperPage } from '#components/print/paper-page.tsx'
import { PaperScreen } from '#components/print/paper-screen.tsx'
import { PlanSetUpScreen } from '#components/print/set-up/plan-set-up-screen.tsx'
import { wellTexts } from '#components/print/set-up/row-texts.ts'
import { SetUpBody } from '#components/print/set-up/set-up-page.tsx'
import { PaperWordsProvider, usePaperWords } from '#components/print/words.tsx'
import { useSheet } from '#components/sheet/use-sheet.ts'
import type { Rows } from '#lib/editor/draft.ts'
import type { MenuDraft } from '#lib/editor/http.ts'
import { assembleDocument } from '#lib/editor/problems-of.ts'
import { type Paper, paperOf } from '#lib/paper/page/papers.ts'
import { setUpFacts } from '#lib/paper/set-up/set-up-facts.ts'
import { setUpPages } from '#lib/paper/set-up/set-up-layout.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface Shown {
  readonly document: StationDocument
  /** null: it is a draft. */
  readonly revision: number | null
  readonly at: number
  readonly isDemo: boolean
}

const LOOK_EVERY_MS = 5_000

/** The sheet of a document, or why there is none. */
function SetUpPaper({
  shown,
  note,
  links,
}: {
  readonly shown: Shown | null
  readonly note: string | null
  readonly links: ReactNode
}) {
  const words = usePaperWords()
  const [chosen, setChosen] = useState<Paper | null>(null)
  const paper = chosen ?? paperOf(shown?.document.locale ?? 'en-US')
  const facts = shown && setUpFacts(shown.document)
  const pages = facts === null ? [] : setUpPages(paper, wellTexts(words, facts))
  const foot = [
    words.setUp.scale,
    ...(facts?.contactsSaid === false ? [words.setUp.touchesUnsaid] : []),
    words.setUp.decides,
  ].join(' ')
  return (
    <PaperScreen
      title={words.setUp.title}
      paper={paper}
      onPaper={setChosen}
      pages={pages.length}
      links={links}
      note={note}
    >
      {shown &&
        pages.map((page, at) => (
          <PaperPage
            // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
            key={at}
            paper={paper}
            frame={{
              title: words.setUp.title,
              station: shown.document.name,
              facts: [
                shown.revision === null ? words.setUp.draft : words.setUp.revision(shown.revision),
                words.setUp.printed(shown.at, shown.document.timeZone),
              ],
              demo: shown.isDemo ? words.setUp.demo : null,
              signed: [words.setUp.setUpBy, words.setUp.date],
              foot,
              page: words.frame.page(at + 1, pages.length),
            }}
          >
            <SetUpBody paper={paper} page={page} />
          </PaperPage>
        ))}
    </PaperScreen>
  )
}

function Links({ other, label }: { readonly other: string; readonly label: string }) {
  const { frame: words } = usePaperWords()
  const station = useSearchParams().get('station') ?? ''
  return (
    <>
      <a href={`/menu?station=${station}`}>{words.toSetUp}</a>
      <a href={`/paper/set-up?station=${station}${other}`}>{label}</a>
    </>
  )
}

/** What services are opened on: of an open one, its own revision. */
function OfPublished({ station }: { readonly station: string }) {
  const { frame: words } = usePaperWords()
  const { answer, isLost } = useSheet()
  const told = answer?.facts ?? null
  // Of a station that isn't published another may be told: its line is no answer here.
  const facts = station === '' || told?.station.id === station ? told : null
  const shown = answer &&
    facts && {
      document: facts.station,
      revision: facts.revision,
      at: answer.at,
      isDemo: answer.demo === true || facts.station.invented,
    }
  const note = isLost
    ? answer
      ? words.lost
      : words.never
    : answer === null
      ? words.loading
      : facts === null
        ? words.noStation
        : null
  return (
    <SetUpPaper
      shown={shown}
      note={note}
      links={<Links other="&of=draft" label={words.toDraft} />}
    />
  )
}

/** The line as it is being set up. */
function OfDraft({ station }: { readonly station: string }) {
  const { frame: words } = usePaperWords()
  const { answer } = useSheet()
  const { seen, refused } = useAccess<MenuDraft>(`/menu/draft?station=${station}`, LOOK_EVERY_MS)
  // Asked for without `after`, it is all of the rows; labels say nothing of where a pan goes.
  const made = seen && assembleDocument({ station, rows: seen.rows as Rows }, {})
  const shown =
    made?.ok === true && answer !== null
      ? {
          document: made.document,
          revision: null,
          at: answer.at,
          isDemo: answer.demo === true || made.document.invented,
        }
      : null
  const note =
    refused === 'not-yours' || refused === 'not-joined'
      ? words.notLead
      : refused !== null
        ? words.lost
        : seen === null
          ? words.loading
          : made?.ok === false
            ? words.notWhole(made.problems.length)
            : null
  return (
    <SetUpPaper shown={shown} note={note} links={<Links other="" label={words.toPublished} />} />
  )
}

function OfAddress() {
  const asked = useSearchParams()
  const station = asked.get('station') ?? ''
  if (asked.get('service')) return <PlanSetUpScreen />
  return (
    <PaperWordsProvider>
      {asked.get('of') === 'draft' ? (
        <OfDraft station={station} />
      ) : (
        <OfPublished station={station} />
      )}
    </PaperWordsProvider>
  )
}

/** The line's set-up sheet, printed from the browser: of a plan, of a draft, or as it is usual. */
export function SetUpSheetScreen() {
  return (
    <Suspense fallback={null}>
      <OfAddress />
    </Suspense>
  )
}
