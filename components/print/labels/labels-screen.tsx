'use client'

import { useEffect, useMemo, useState } from 'react'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { plannedTransport } from '#components/live/planned-transport.ts'
import { useServerTime } from '#components/live/server-time.ts'
import { WordsProvider } from '#components/live/words.tsx'
import { LabelsBoard } from '#components/print/labels/labels-board.tsx'
import { PaperWordsProvider, usePaperWords } from '#components/print/words.tsx'
import { LABEL_KINDS, serviceLabels } from '#lib/paper/labels/label-facts.ts'
import { paperOf } from '#lib/paper/page/papers.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import type { Transport } from '#lib/sync/transport.ts'

function Links() {
  const { labels: words } = usePaperWords()
  return (
    <>
      <a href={`/plan${location.search}`}>{words.toPlan}</a>
      <a href="/">{words.toStart}</a>
    </>
  )
}

function OfService({ state }: { readonly state: RunningState }) {
  const { labels: words, setUp } = usePaperWords()
  const { station, plan, revision } = state
  const { timeZone } = station
  const minute = Math.floor(useServerTime() / MINUTE_MS) * MINUTE_MS
  const isDemo = state.kind === 'demo' || station.invented
  const groups = useMemo(() => {
    const where = {
      timeZone,
      scale: station.safety.scale,
      days: limitsOf(station).dateMark.days,
      isDemo,
    }
    const all = serviceLabels(state, minute).map((facts) => ({
      kind: facts.kind,
      id: facts.id,
      name: facts.name,
      texts: words.texts(facts, where),
      copies: facts.copies,
      isUsual: facts.isUsual,
    }))
    return LABEL_KINDS.map((kind) => ({
      id: kind,
      title: words.kinds[kind],
      labels: all.filter((one) => one.kind === kind),
    })).filter(({ labels }) => labels.length > 0)
  }, [state, minute, words, timeZone, station, isDemo])
  return (
    <LabelsBoard
      title={words.title}
      groups={groups}
      head={[
        station.name,
        ...(plan ? [words.forDay(plan.on)] : []),
        setUp.revision(revision),
        setUp.printed(minute, timeZone),
      ]}
      mark={words.mark(revision, minute, timeZone)}
      usual={paperOf(station.locale)}
      links={<Links />}
      note={null}
    />
  )
}

function LabelsNow({ service }: { readonly service: string }) {
  const { labels: words } = usePaperWords()
  const state = useCrew((view) => view.state)
  const link = useCrew((view) => view.link)
  if (isRunning(state) && (service === '' || state.service === service))
    return <OfService state={state} />
  const note = link === 'live' ? words.noService : words.connecting
  return (
    <LabelsBoard
      title={words.title}
      groups={[]}
      head={[]}
      mark=""
      usual="letter"
      links={<Links />}
      note={note}
    />
  )
}

/** Of the service in the address; else of the one that is open. */
function OfAddress() {
  const [service, setService] = useState<string | null>(null)
  useEffect(() => setService(new URLSearchParams(location.search).get('service') ?? ''), [])
  const through = useMemo(
    () => (service ? (transport: Transport) => plannedTransport(service, transport) : undefined),
    [service],
  )
  const { labels: words } = usePaperWords()
  if (service === null)
    return (
      <main>
        <h1>{words.title}</h1>
      </main>
    )
  return (
    <CrewProvider role="lead" {...(through === undefined ? {} : { through })}>
      <LabelsNow service={service} />
    </CrewProvider>
  )
}

/** Labels of a service's pans, back-ups, batches, trays and cups, printed from the browser. */
export function LabelsScreen() {
  return (
    <WordsProvider>
      <PaperWordsProvider>
        <OfAddress />
      </PaperWordsProvider>
    </WordsProvider>
  )
}
