'use client'

import { type ReactNode, useEffect, useMemo, useState } from 'react'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { plannedTransport } from '#components/live/planned-transport.ts'
import { useServerTime } from '#components/live/server-time.ts'
import { WordsProvider } from '#components/live/words.tsx'
import { type Ahead, askAhead } from '#components/plan/use-ahead.ts'
import { useCrewInitials } from '#components/prep/use-crew-initials.ts'
import { PaperPage } from '#components/print/paper-page.tsx'
import { PaperScreen } from '#components/print/paper-screen.tsx'
import { PaperWordsProvider, usePaperWords } from '#components/print/words.tsx'
import { type Paper, paperOf } from '#lib/paper/page/papers.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import type { Transport } from '#lib/sync/transport.ts'

/** Where the laptop didn’t answer, it is asked again. */
const AGAIN_AFTER_MS = 3_000

/** What a paper of a plan is made of. */
export interface PlanShown {
  readonly state: RunningState
  readonly plan: ServicePlan
  readonly prep: PrepState
  /** What the lead alone is told of the day. */
  readonly ahead: Ahead & { readonly is: 'there' }
  /** Initials by the id of each entry of the crew. */
  readonly told: Readonly<Record<string, string>>
}

export interface PaperMade {
  readonly title: string
  /** Below the station's name, as "For Friday, 46 guests". */
  readonly sub: string
  readonly signed: readonly string[]
  readonly foot: string
  /** Its pages' bodies, for a paper. */
  readonly bodies: readonly ReactNode[]
}

/** A plan's paper as it is printed, with what may be done on its screen above the pages. */
export function PlanPaper({
  shown,
  make,
  aside,
}: {
  readonly shown: PlanShown
  readonly make: (paper: Paper) => PaperMade
  /** Beside its pages: what is asked about them. */
  readonly aside?: ReactNode
}) {
  const words = usePaperWords()
  const { state } = shown
  const { station, revision } = state
  const [chosen, setChosen] = useState<Paper | null>(null)
  const printedAt = Math.floor(useServerTime() / MINUTE_MS) * MINUTE_MS
  const paper = chosen ?? paperOf(station.locale)
  // Time passes on the screen each second; the paper is laid anew when what it says changes.
  const made = useMemo(() => make(paper), [make, paper])
  const demo = station.invented
    ? words.lists.demo
    : shown.plan.kind === 'practice'
      ? words.lists.practice
      : null
  return (
    <PaperScreen
      title={made.title}
      paper={paper}
      onPaper={setChosen}
      pages={made.bodies.length}
      links={<PlanLink />}
      note={null}
      aside={aside}
      isAsideLater
    >
      {made.bodies.map((body, at) => (
        <PaperPage
          // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
          key={at}
          paper={paper}
          frame={{
            title: made.title,
            station: `${station.name}. ${made.sub}`,
            facts: [
              words.lists.revision(revision),
              words.lists.printed(printedAt, station.timeZone),
            ],
            demo,
            signed: made.signed,
            foot: made.foot,
            page: words.frame.page(at + 1, made.bodies.length),
          }}
        >
          {body}
        </PaperPage>
      ))}
    </PaperScreen>
  )
}

function PlanLink() {
  const words = usePaperWords()
  const [search, setSearch] = useState('')
  useEffect(() => setSearch(location.search), [])
  return <a href={`/plan${search}`}>{words.lists.toPlan}</a>
}

function Quiet({ title, note }: { readonly title: string; readonly note: string }) {
  return (
    <PaperScreen
      title={title}
      paper="letter"
      onPaper={() => undefined}
      pages={0}
      links={<PlanLink />}
      note={note}
    >
      {null}
    </PaperScreen>
  )
}

interface Followed {
  readonly title: string
  /** It says what the larder has, so par is asked for too. */
  readonly hasPar: boolean
  readonly render: (shown: PlanShown) => ReactNode
}

function Planned({ service, title, hasPar, render }: Followed & { readonly service: string }) {
  const { lists: words } = usePaperWords()
  const state = useCrew((view) => view.state)
  const plan = isRunning(state) && state.service === service ? state.plan : undefined
  const expected = isRunning(state) ? state.expected : null
  const [ahead, setAhead] = useState<Ahead>({ is: 'looking' })
  const told = useCrewInitials(plan ? service : null, plan?.crew)
  const isPlanned = plan !== undefined
  useEffect(() => {
    let isShown = true
    let timer: ReturnType<typeof setTimeout> | undefined
    const look = async () => {
      if (!isPlanned) return
      const next = await askAhead({ guests: expected, ...(hasPar ? { service } : {}) })
      if (!isShown) return
      setAhead(next)
      if (next.is === 'lost') timer = setTimeout(() => void look(), AGAIN_AFTER_MS)
    }
    void look()
    return () => {
      isShown = false
      clearTimeout(timer)
    }
  }, [isPlanned, expected, hasPar, service])
  if (!isRunning(state) || plan === undefined)
    return <Quiet title={title} note={words.connecting} />
  if (state.prep === undefined) return <Quiet title={title} note={words.notTaken} />
  if (ahead.is !== 'there')
    return <Quiet title={title} note={ahead.is === 'refused' ? words.notLead : words.connecting} />
  if (told === null) return <Quiet title={title} note={words.connecting} />
  return render({ state, plan, prep: state.prep, ahead, told })
}

function OfAddress({ title, hasPar, render }: Followed) {
  const { lists: words } = usePaperWords()
  const [service, setService] = useState<string | null>(null)
  useEffect(() => setService(new URLSearchParams(location.search).get('service') ?? ''), [])
  const through = useMemo(
    () => (service ? (transport: Transport) => plannedTransport(service, transport) : undefined),
    [service],
  )
  // The address isn't known on the server, whose pages may have no style of their own.
  if (service === null)
    return (
      <main>
        <h1>{title}</h1>
      </main>
    )
  if (through === undefined) return <Quiet title={title} note={words.noPlan} />
  return (
    <CrewProvider role="lead" through={through}>
      <Planned {...{ service, title, hasPar, render }} />
    </CrewProvider>
  )
}

interface PlanPaperScreenProps {
  readonly titleOf: (words: ReturnType<typeof usePaperWords>) => string
  readonly hasPar?: boolean
  readonly render: (shown: PlanShown) => ReactNode
}

/** A paper of the plan in the address, as the laptop has it now. */
export function PlanPaperScreen(props: PlanPaperScreenProps) {
  return (
    <WordsProvider>
      <PaperWordsProvider>
        <Titled {...props} />
      </PaperWordsProvider>
    </WordsProvider>
  )
}

function Titled({ titleOf, hasPar = false, render }: PlanPaperScreenProps) {
  return <OfAddress title={titleOf(usePaperWords())} {...{ hasPar, render }} />
}
