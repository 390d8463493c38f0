import { useMemo, useState } from 'react'
import { BuildScreen } from '#components/assembly/build-screen.tsx'
import foot from '#components/assembly/foot.module.css'
import { HerePanel, HereSign, useHere } from '#components/assembly/here.tsx'
import { IdleLine } from '#components/assembly/idle-line.tsx'
import { mainOf } from '#components/assembly/main-of.ts'
import { useMainAction } from '#components/assembly/pedal.ts'
import { StopPanel } from '#components/assembly/stop-panel.tsx'
import { TakeBackPanel } from '#components/assembly/take-back-panel.tsx'
import { ToldBands } from '#components/assembly/told-bands.tsx'
import { AssemblyWordsProvider, useAssemblyWords } from '#components/assembly/words.tsx'
import { WrongScoopPanel } from '#components/assembly/wrong-scoop-panel.tsx'
import { Awake } from '#components/device/awake-notice.tsx'
import { SoundToggle } from '#components/device/sound-toggle.tsx'
import { useRoom } from '#components/device/use-device.ts'
import { useKnock, useKnockForNew } from '#components/device/use-sound.ts'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { Button } from '#components/ui/button.tsx'
import { hasBackup } from '#lib/rooms/care/facts/soiling.ts'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { isLong } from '#lib/rooms/making/views/lids.ts'
import { waitingRemakes } from '#lib/rooms/making/views/waiting-remakes.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

function Work({ state }: { readonly state: RunningState }) {
  const words = useAssemblyWords()
  const [here, setHere] = useHere()
  const [chosen, setChosen] = useState<string | null>(null)
  const [read, setRead] = useState<string | null>(null)
  const [panel, setPanel] = useState<'take-back' | 'wrong-scoop' | 'here' | null>(null)
  const { said, busy, act, hush } = useActing(words.loadRefusals)
  const room = useRoom()
  const view = useMemo(() => assemblyView(state, chosen, here), [state, chosen, here])
  useKnock('new', state.nextTicket)
  useKnockForNew('new', waitingRemakes(state))
  useKnock('stop', stoppedBuilds(state).length)
  const { now, stopped } = view
  const name = nameIn(state.station)
  const byWell = room === 'phone' || isLong(state.station)
  const at = here === null ? {} : { screen: here }
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
          { type: 'start', ...build, seen: now.version, read: read === now.reads, ...at },
          words.started(now.name),
        )
      case 'finish':
        return void act({ type: 'finish', ...build, ...at }, words.finishOf(now.name))
    }
  })
  const choose = (one: string | null) => {
    hush()
    setChosen(one)
  }

  if (stopped)
    return (
      <StopPanel
        key={`${stopped.name} ${stopped.at}`}
        stopped={stopped}
        station={state.station}
        byWell={byWell}
        room={room}
        busy={busy}
        onLeave={() => choose(null)}
        onAnswer={(answer) => {
          setChosen(null)
          void act(
            {
              type: 'acknowledge',
              ticket: stopped.ticket,
              letter: stopped.letter,
              stopped: stopped.at,
              ...answer,
            },
            words.acknowledged(stopped.name),
          )
        }}
      />
    )
  if (panel === 'here')
    return (
      <HerePanel
        here={here}
        onClose={() => setPanel(null)}
        onChoose={(one) => {
          setPanel(null)
          setHere(one)
        }}
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
      <Button
        kind="quiet"
        className={foot.takeBack}
        disabled={view.lastMade.length === 0}
        onClick={() => setPanel('take-back')}
      >
        {words.takeBack}
      </Button>
      <Button kind="quiet" className={foot.takeBack} onClick={() => setPanel('wrong-scoop')}>
        {words.wrongScoop}
      </Button>
      <SoundToggle />
    </div>
  )
  const signs = (
    <>
      <Awake />
      <HereSign here={here} onChange={() => setPanel('here')} />
      <Connection />
    </>
  )
  const told = <ToldBands view={view} onAnswer={choose} />
  if (!now)
    return (
      <IdleLine
        station={state.station}
        made={view.made}
        queue={view.queue}
        room={room}
        signs={signs}
        told={told}
        tools={tools}
        onChoose={choose}
      />
    )
  return (
    <BuildScreen
      now={now}
      view={view}
      station={state.station}
      room={room}
      byWell={byWell}
      main={main}
      busy={busy}
      said={said}
      signs={signs}
      told={told}
      tools={tools}
      onPress={press}
      onChoose={choose}
      onTakeOver={() =>
        void act(
          {
            type: 'start',
            ticket: now.ticket,
            letter: now.letter,
            seen: now.version,
            read: read === now.reads,
            takeOver: true,
            ...at,
          },
          words.tookOver(now.name, now.elsewhere ?? ''),
        )
      }
    />
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
