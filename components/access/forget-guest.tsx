import { useState } from 'react'
import { isRefused, type Refused, tell } from '#components/access/ask.ts'
import styles from '#components/access/privacy.module.css'
import { usePrivacyWords } from '#components/access/privacy-words.tsx'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { useSettled } from '#components/ui/settled.ts'
import type { ForgetGuest } from '#lib/access/kept-http.ts'
import { isRunning } from '#lib/service/state.ts'
import { findTicket } from '#lib/service/tickets.ts'

/** What a guest said goes at once: the ticket's number, what it is, and once more to be sure. */
export function ForgetPanel({ onForgot }: { readonly onForgot: () => void }) {
  const { forget: words, pad } = usePrivacyWords()
  const state = useCrew((view) => view.state)
  const names = useCrew((view) => view.names)
  const [typed, setTyped] = useState('')
  const [isSure, setSure] = useState(false)
  const [forgot, setForgot] = useState<number | null>(null)
  const [refused, setRefused] = useState<Refused | null>(null)
  const isSettled = useSettled(isSure)
  const running = isRunning(state) ? state : null
  const ticket = running && typed !== '' ? findTicket(running, Number(typed)) : undefined
  const name = ticket?.sentBy ? names[ticket.sentBy] : undefined
  const type = (text: string) => {
    setTyped(text.slice(0, 4))
    setSure(false)
    setForgot(null)
  }
  const forget = async (asked: ForgetGuest) => {
    const answer = await tell('/access/forget', asked)
    if (isRefused(answer)) return setRefused(answer)
    setRefused(null)
    setForgot(asked.ticket)
    setTyped('')
    setSure(false)
    onForgot()
  }
  return (
    <Panel title={words.title} label={words.title} facts={[words.what]}>
      {running === null ? (
        <p>{words.noService}</p>
      ) : (
        <div className={styles.two}>
          <NumberPad words={pad} text={typed} decimals={0} onChange={type} side={null} />
          <div className={styles.side}>
            <p className={styles.typed} role="status">
              {typed === ''
                ? words.none
                : ticket
                  ? words.is(ticket.number, ticket.builds.length)
                  : words.unknown(typed)}
              {name !== undefined && <b>{words.named(name)}</b>}
            </p>
            {ticket && !isSure && (
              <Button kind="no" size="large" onClick={() => setSure(true)}>
                {words.act(ticket.number)}
              </Button>
            )}
            {ticket && isSure && (
              <>
                <Note kind="watch">{words.sureWhy}</Note>
                <Button
                  kind="no"
                  size="large"
                  onClick={() => {
                    if (isSettled())
                      void forget({ service: running.service, ticket: ticket.number })
                  }}
                >
                  {words.sure(ticket.number)}
                </Button>
                <Button kind="quiet" onClick={() => setSure(false)}>
                  {words.not}
                </Button>
              </>
            )}
            <RefusedSaid refused={refused} />
            {forgot !== null && (
              <Note kind="done" role="status">
                {words.done(forgot)}
              </Note>
            )}
          </div>
        </div>
      )}
    </Panel>
  )
}
