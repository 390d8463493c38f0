import { useState } from 'react'
import { UnpaidPanel } from '#components/hand-over/lists-panel.tsx'
import { HandOverWordsProvider, useHandOverWords } from '#components/hand-over/words.tsx'
import { type Acting, useActing } from '#components/live/acting.ts'
import { useServerTime } from '#components/live/server-time.ts'
import { Button } from '#components/ui/button.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { unpaidList } from '#lib/rooms/shelf/views/unpaid-list.ts'
import type { RunningState } from '#lib/service/state.ts'

interface Props {
  readonly state: RunningState
  readonly acting: Acting
  readonly onBack: (() => void) | null
}

function Unpaid({ state, acting: { act, busy }, onBack }: Props) {
  const words = useHandOverWords()
  const now = useServerTime()
  const [sure, setSure] = useState<number | null>(null)
  // The second answer comes under the finger that gave the first.
  const isSettled = useSettled(sure)
  const { currency } = state.station
  return (
    <UnpaidPanel
      list={unpaidList(state)}
      currency={currency}
      now={now}
      busy={busy}
      onPaid={({ ticket }) =>
        void act({ type: 'pay', ticket, paid: true }, words.isPaid(ticket, true))
      }
      more={({ ticket, cents }) =>
        sure === ticket ? (
          <Button
            kind="no"
            disabled={busy}
            onClick={() => {
              if (!isSettled()) return
              setSure(null)
              const command = { type: 'pay', ticket, paid: false, writtenOff: true } as const
              void act(command, words.isWrittenOff(ticket))
            }}
          >
            {words.yesWriteOff(words.sayCents(cents, currency))}
          </Button>
        ) : (
          <Button
            kind="quiet"
            aria-label={words.writeOffOf(ticket)}
            onClick={() => setSure(ticket)}
          >
            {words.writeOff}
          </Button>
        )
      }
      onBack={onBack}
    />
  )
}

/** What was given out and isn't paid: the lead takes the money, or writes it off, asked twice. */
export function UnpaidForLead(props: Props) {
  return (
    <HandOverWordsProvider>
      <Unpaid {...props} />
    </HandOverWordsProvider>
  )
}

function Closed({ state }: { readonly state: RunningState }) {
  const words = useHandOverWords()
  const acting = useActing(words.loadRefusals)
  if (unpaidList(state).tickets.length === 0) return null
  return (
    <>
      <p role="status">{acting.said?.text}</p>
      <Unpaid state={state} acting={acting} onBack={null} />
    </>
  )
}

/** The same once the service is closed, until the next one opens. */
export function UnpaidOnceClosed(props: { readonly state: RunningState }) {
  return (
    <HandOverWordsProvider>
      <Closed {...props} />
    </HandOverWordsProvider>
  )
}
