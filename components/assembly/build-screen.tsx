import type { ReactNode } from 'react'
import styles from '#components/assembly/assembly.module.css'
import { AssemblyPan } from '#components/assembly/assembly-pan.tsx'
import { QueueStrip, WarmCard, WrapMark } from '#components/assembly/build-foot.tsx'
import { BuildHeader, HandlingSteps, NeedsBanner } from '#components/assembly/build-header.tsx'
import { BuildLine, type Stand } from '#components/assembly/build-line.tsx'
import foot from '#components/assembly/foot.module.css'
import { HeldBand } from '#components/assembly/held-band.tsx'
import type { Main } from '#components/assembly/main-of.ts'
import { sayLacks } from '#components/assembly/say-lacks.ts'
import { StopLine } from '#components/assembly/stop-line.tsx'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import type { Said } from '#components/live/acting.ts'
import { Button } from '#components/ui/button.tsx'
import type { AssemblyView } from '#lib/rooms/making/views/assembly.ts'
import type { PanForBuild } from '#lib/rooms/making/views/assembly-pan.ts'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

const STANDS: Readonly<Record<PanForBuild['kind'], Stand>> = {
  take: 'wide',
  no: 'wide',
  away: 'shut',
  idle: 'sliver',
}

const standOf = (pan: PanForBuild | undefined): Stand =>
  pan?.kind === 'take' && pan.fromBackup ? 'behind' : STANDS[pan?.kind ?? 'idle']

/** One confirm, and no pedal: what another makes goes on here only by asking. */
function TakeOver({
  name,
  screen,
  busy,
  onAnswer,
}: {
  readonly name: string
  readonly screen: string
  readonly busy: boolean
  readonly onAnswer: (yes: boolean) => void
}) {
  const words = useAssemblyWords()
  return (
    <div className={foot.asks}>
      <p>{words.takeOverAsk(name, screen)}</p>
      <Button
        size="large"
        kind="main"
        disabled={busy}
        sub={words.takeOverYesThen}
        onClick={() => onAnswer(true)}
      >
        {words.takeOverYes}
      </Button>
      <Button size="large" onClick={() => onAnswer(false)}>
        {words.takeOverNo(screen)}
      </Button>
    </div>
  )
}

/** One build drawn as the line: what is taken, left out and kept shut, and what is done next. */
export function BuildScreen({
  now,
  view,
  station,
  room,
  byWell,
  main,
  busy,
  said,
  signs,
  told,
  tools,
  onPress,
  onChoose,
  onTakeOver,
}: {
  readonly now: NowBuild
  readonly view: AssemblyView
  readonly station: StationDocument
  readonly room: Room
  readonly byWell: boolean
  readonly main: Main | null
  readonly busy: boolean
  readonly said: Said | null
  readonly signs: ReactNode
  readonly told: ReactNode
  readonly tools: ReactNode
  readonly onPress: () => void
  readonly onChoose: (name: string | null) => void
  readonly onTakeOver: () => void
}) {
  const words = useAssemblyWords()
  const isReading = main?.kind === 'read'
  const isShut = now.heldLine !== null || !now.checked
  const asks = now.elsewhere !== null && !isReading && !isShut
  return (
    <div className={styles.screen}>
      <BuildHeader now={now}>{signs}</BuildHeader>
      {told}
      <NeedsBanner now={now} withSteps={!isReading && !isShut} />
      {now.lacks !== null && (
        <p className={styles.short} role="alert">
          {sayLacks(words, now)}
        </p>
      )}
      <p className={said?.kind === 'refused' ? styles.refused : 'visually-hidden'} role="status">
        {said?.text}
      </p>
      {isShut && <HeldBand now={now} />}
      {isReading ? (
        <HandlingSteps backups={now.backups} />
      ) : (
        <div className={styles.line}>
          {now.heldLine ? (
            <StopLine
              station={station}
              line={now.heldLine}
              label={words.line}
              byWell={byWell}
              room={room}
            />
          ) : (
            <BuildLine
              station={station}
              label={words.line}
              byWell={byWell}
              room={room}
              standOf={({ id }) => standOf(now.pans[id])}
              renderPan={(pan, component) => (
                <AssemblyPan
                  pan={now.pans[pan.id] ?? { kind: 'idle' }}
                  component={component}
                  soiledBy={view.soiled[pan.id] ?? []}
                />
              )}
            />
          )}
        </div>
      )}
      <div className={foot.foot} data-short={isReading || isShut}>
        {!isReading && !isShut && (
          <div className={foot.cards}>
            <WrapMark now={now} />
            <WarmCard view={view} />
          </div>
        )}
        <div className={foot.strip}>
          <QueueStrip queue={view.queue} room={room} onChoose={onChoose} />
          {tools}
        </div>
        {asks && now.elsewhere !== null ? (
          <TakeOver
            name={now.name}
            screen={now.elsewhere}
            busy={busy}
            onAnswer={(yes) => (yes ? onTakeOver() : onChoose(null))}
          />
        ) : (
          <Button
            kind="main"
            size="large"
            className={foot.main}
            data-main-action=""
            data-action={main?.kind}
            lacks={
              main || busy ? null : now.held ? words.held(now.name) : words.cannotStart(now.name)
            }
            disabled={busy}
            sub={now.keptApart && main?.kind === 'finish' && !busy ? words.cleanGloves : undefined}
            onClick={onPress}
          >
            {busy ? words.sending : main?.words}
          </Button>
        )}
      </div>
    </div>
  )
}
