import { useMemo, useState } from 'react'
import styles from '#components/assembly/assembly.module.css'
import { AssemblyPan } from '#components/assembly/assembly-pan.tsx'
import { QueueStrip, WarmCard, WrapMark } from '#components/assembly/build-foot.tsx'
import { BuildHeader, HandlingSteps, NeedsBanner } from '#components/assembly/build-header.tsx'
import foot from '#components/assembly/foot.module.css'
import { IdleLine } from '#components/assembly/idle-line.tsx'
import { mainOf } from '#components/assembly/main-of.ts'
import { NotMade } from '#components/assembly/not-made.tsx'
import { useMainAction } from '#components/assembly/pedal.ts'
import { sayLacks } from '#components/assembly/say-lacks.ts'
import { StopPanel } from '#components/assembly/stop-panel.tsx'
import { TakeBackPanel } from '#components/assembly/take-back-panel.tsx'
import { AssemblyWordsProvider, useAssemblyWords } from '#components/assembly/words.tsx'
import { WrongScoopPanel } from '#components/assembly/wrong-scoop-panel.tsx'
import { Awake } from '#components/device/awake-notice.tsx'
import { SoundToggle } from '#components/device/sound-toggle.tsx'
import { type Room, useKnock, useKnockForNew, useRoom } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { hasBackup } from '#lib/rooms/care/facts/soiling.ts'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { widePans } from '#lib/rooms/making/views/now-build.ts'
import { waitingRemakes } from '#lib/rooms/making/views/waiting-remakes.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** From this many wide pans on, those that stay shut are drawn from top to bottom. */
const CROWDED: Readonly<Record<Room, number>> = {
  phone: Number.POSITIVE_INFINITY,
  small: 8,
  medium: 9,
  large: Number.POSITIVE_INFINITY,
}

function Work({ state }: { readonly state: RunningState }) {
  const words = useAssemblyWords()
  const [chosen, setChosen] = useState<string | null>(null)
  const [read, setRead] = useState<string | null>(null)
  const [panel, setPanel] = useState<'take-back' | 'wrong-scoop' | null>(null)
  const { said, busy, act, hush } = useActing(words.loadRefusals)
  const room = useRoom()
  const view = useMemo(() => assemblyView(state, chosen), [state, chosen])
  useKnock('new', state.nextTicket)
  useKnockForNew('new', waitingRemakes(state))
  useKnock('stop', stoppedBuilds(state).length)
  const { now, stopped } = view
  const name = nameIn(state.station)
  const main = panel ? null : mainOf(words, view, read)
  const pressed = main && now ? `${main.kind} ${now.keptApart} ${now.reads}` : null
  const press = useMainAction(pressed, () => {
    if (!main || !now || busy) return
    const build = { ticket: now.ticket, letter: now.letter }
    switch (main.kind) {
      case 'read':
        hush()
        return setRead(now.reads)
      case 'skip':
        hush()
        return setChosen(view.next)
      case 'start':
        return void act(
          { type: 'start', ...build, seen: now.version, read: read === now.reads },
          words.started(now.name),
        )
      case 'finish':
        return void act({ type: 'finish', ...build }, words.finishOf(now.name))
    }
  })

  if (stopped)
    return (
      <StopPanel
        key={`${stopped.name} ${stopped.at}`}
        stopped={stopped}
        station={state.station}
        busy={busy}
        onAnswer={(answer) =>
          void act(
            { type: 'acknowledge', ticket: stopped.ticket, letter: stopped.letter, ...answer },
            words.acknowledged(stopped.name),
          )
        }
      />
    )
  if (panel === 'wrong-scoop')
    return (
      <WrongScoopPanel
        station={state.station}
        hasBackup={(component) => hasBackup(state, component)}
        busy={busy}
        onClose={() => setPanel(null)}
        onSoiled={(pan, by, backup) => {
          setPanel(null)
          const which = backup ? { backup } : {}
          const said = backup ? words.backupSoiledBy : words.soiledBy
          void act(
            { type: 'soilPan', pan: pan.id, by, ...which },
            said(name(pan.component), name(by)),
          )
        }}
      />
    )
  if (panel === 'take-back')
    return (
      <TakeBackPanel
        made={view.lastMade}
        busy={busy}
        onClose={() => setPanel(null)}
        onTakeBack={(build, made) => {
          setPanel(null)
          void act(
            { type: 'takeBack', ticket: build.ticket, letter: build.letter, made },
            words.takenBack(build.name),
          )
        }}
      />
    )
  const tools = (
    <div className={foot.tools}>
      <button
        type="button"
        className={foot.takeBack}
        disabled={view.lastMade.length === 0}
        onClick={() => setPanel('take-back')}
      >
        {words.takeBack}
      </button>
      <button type="button" className={foot.takeBack} onClick={() => setPanel('wrong-scoop')}>
        {words.wrongScoop}
      </button>
      <SoundToggle />
    </div>
  )
  if (!now)
    return (
      <IdleLine station={state.station} made={view.made}>
        {tools}
      </IdleLine>
    )
  const isReading = main?.kind === 'read'
  const isShut = now.held || !now.checked
  return (
    <div className={styles.screen} data-with-needs={now.keepFrom.length + now.leaveOut.length > 0}>
      <BuildHeader now={now}>
        <Connection />
        <Awake />
      </BuildHeader>
      <NeedsBanner now={now} withSteps={!isReading && !isShut} />
      {now.lacks !== null && (
        <p className={styles.short} role="alert">
          {sayLacks(words, now)}
        </p>
      )}
      <p className={said?.kind === 'refused' ? styles.refused : 'visually-hidden'} role="status">
        {said?.text}
      </p>
      {isReading && <HandlingSteps backups={now.backups} />}
      {isShut && <NotMade now={now} />}
      {!isReading && !isShut && (
        <div
          className={styles.line}
          data-crowded={widePans(now) >= CROWDED[room]}
          data-apart={now.keptApart}
        >
          <Line
            station={state.station}
            label={words.line}
            wrap={room === 'phone' ? 'by-well' : 'never'}
            widthOf={(pan) => (now.pans[pan.id]?.kind === 'idle' ? 'sliver' : 'wide')}
            renderPan={(pan, component) => (
              <AssemblyPan
                pan={now.pans[pan.id] ?? { kind: 'idle' }}
                component={component}
                soiledBy={view.soiled[pan.id] ?? []}
              />
            )}
          />
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
          <QueueStrip
            queue={view.queue}
            room={room}
            onChoose={(name) => {
              hush()
              setChosen(name)
            }}
          />
          {tools}
        </div>
        <button
          type="button"
          className={foot.main}
          data-main-action=""
          data-kind={main?.kind ?? 'none'}
          disabled={main === null || busy}
          onClick={press}
        >
          <span>
            {busy
              ? words.sending
              : (main?.words ?? (now.held ? words.held(now.name) : words.cannotStart(now.name)))}
          </span>
          {now.keptApart && main?.kind === 'finish' && (
            <span className={foot.hint}>{words.cleanGloves}</span>
          )}
        </button>
      </div>
    </div>
  )
}

/** Making builds while a service is open: one at a time. */
export function AssemblyWork({ state }: { readonly state: RunningState }) {
  return (
    <AssemblyWordsProvider>
      <Work state={state} />
    </AssemblyWordsProvider>
  )
}
