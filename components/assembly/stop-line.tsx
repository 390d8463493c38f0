import { No, PanName, Sliver, Take } from '#components/assembly/assembly-pan.tsx'
import { BuildLine, type Stand } from '#components/assembly/build-line.tsx'
import pan from '#components/assembly/pan.module.css'
import styles from '#components/assembly/stop.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import type { PanInStop } from '#lib/rooms/making/views/assembly-stop.ts'
import type { PartAs, StopPan } from '#lib/rooms/making/views/stop-line.ts'
import type { Component, Pan, StationDocument } from '#lib/station/station-document.ts'

/** What is asked of the pans that a stopped build is made of. */
export interface AskedOfPans {
  readonly pans: Readonly<Record<string, PanInStop>>
  readonly isIn: (pan: PanInStop) => boolean
  readonly isFixed: (pan: PanInStop) => boolean
  readonly onTap: (component: string) => void
}

const isAsked = (asked: AskedOfPans | null, id: string): boolean => asked?.pans[id] !== undefined

/** What was, struck out. */
function Old({ part, isAlone }: { readonly part: PartAs; readonly isAlone?: boolean }) {
  const words = useAssemblyWords()
  return (
    <span className={styles.old} data-alone={isAlone}>
      <s>{words.part(part)}</s>
      {!isAlone && (
        <>
          <span className="visually-hidden"> {words.becomes} </span>
          <svg viewBox="0 0 32 24" aria-hidden="true">
            <path d="M16 2v18M7 12l9 9 9-9" />
          </svg>
        </>
      )}
    </span>
  )
}

/** The rows of a pan below its name: what changes there. */
function Change({ stop }: { readonly stop: Exclude<StopPan, { kind: 'idle' }> }) {
  const words = useAssemblyWords()
  switch (stop.kind) {
    case 'changed':
      return (
        <>
          <Old part={stop.from} />
          {stop.take ? <Take pan={stop.take} /> : <No />}
        </>
      )
    case 'struck':
      return <Old part={stop.from} isAlone />
    case 'shut':
      return (
        <>
          {stop.from && <Old part={stop.from} isAlone />}
          <span className="visually-hidden">{words.lidOn}</span>
        </>
      )
    case 'marked':
      return (
        <>
          <b className={styles.mark}>{words.marked(stop.why)}</b>
          <span className={styles.stays}>{words.part(stop.from)}</span>
        </>
      )
    case 'same':
      return <span className={styles.stays}>{words.asBefore}</span>
  }
}

/** One pan of the line of a build that may not go on; where it is asked for, a tap clears it. */
function StopPanDrawn({
  stop,
  component,
  asked,
  of,
}: {
  readonly stop: Exclude<StopPan, { kind: 'idle' }>
  readonly component: Component
  readonly asked: AskedOfPans | null
  readonly of: PanInStop | undefined
}) {
  const words = useAssemblyWords()
  const isNo = stop.kind === 'changed' && stop.take === null
  const drawn = {
    'data-kind': stop.kind === 'shut' ? 'away' : isNo || stop.kind === 'struck' ? 'no' : stop.kind,
    'data-side': stop.kind === 'changed' && (stop.take?.onTheSide ?? false),
    'data-backup': stop.kind === 'changed' && (stop.take?.fromBackup ?? false),
  }
  const inside = (
    <>
      <PanName component={component} />
      <Change stop={stop} />
    </>
  )
  if (!asked || !of)
    return (
      <div className={pan.pan} {...drawn}>
        {inside}
      </div>
    )
  const isIn = asked.isIn(of)
  return (
    <button
      type="button"
      className={`${pan.pan} ${styles.asked}`}
      {...drawn}
      aria-pressed={isIn}
      disabled={asked.isFixed(of)}
      onClick={() => asked.onTap(of.component)}
    >
      {inside}
      <span className={styles.state}>
        {of.staysOut ? words.cupStaysOut : isIn ? words.wasIn(of.isCup) : words.wasntIn(of.isCup)}
      </span>
    </button>
  )
}

/** The line of a build that may not go on: old struck out, new in place, the rest in its place. */
export function StopLine({
  station,
  line,
  label,
  byWell,
  room,
  asked = null,
}: {
  readonly station: StationDocument
  readonly line: Readonly<Record<string, StopPan>>
  readonly label: string
  readonly byWell: boolean
  readonly room: Room
  readonly asked?: AskedOfPans | null
}) {
  const words = useAssemblyWords()
  const standOf = ({ id }: Pan): Stand => {
    const stop = line[id]
    const kind = stop?.kind ?? 'idle'
    if (kind === 'idle') return 'sliver'
    if (kind === 'same') return isAsked(asked, id) ? 'narrow' : 'sliver'
    if (stop?.kind === 'changed' && stop.take?.fromBackup) return 'behind'
    if (kind !== 'shut') return 'wide'
    // What it isn't made of gives way to what is asked for.
    return asked && !isAsked(asked, id) ? 'slim' : 'shut'
  }
  return (
    <BuildLine
      station={station}
      label={label}
      byWell={byWell}
      room={room}
      standOf={standOf}
      renderPan={(one, component) => {
        const stop = line[one.id] ?? { kind: 'idle' }
        const stand = standOf(one)
        if (stop.kind === 'idle' || stand === 'sliver' || stand === 'slim')
          return (
            <Sliver
              component={component}
              as={
                stop.kind === 'same'
                  ? words.asBefore
                  : stop.kind === 'shut'
                    ? words.lidOn
                    : undefined
              }
              isHeard={stop.kind === 'shut'}
            />
          )
        return (
          <StopPanDrawn stop={stop} component={component} asked={asked} of={asked?.pans[one.id]} />
        )
      }}
    />
  )
}
