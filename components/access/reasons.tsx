import { useState } from 'react'
import { PassphraseLine } from '#components/access/adult-fields.tsx'
import { isRefused, type Refused, tell } from '#components/access/ask.ts'
import page from '#components/access/page.module.css'
import { usePrivacyWords } from '#components/access/privacy-words.tsx'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { useAccessWords } from '#components/access/words.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'
import type { AskReasons, ReasonsTold } from '#lib/access/kept-http.ts'
import { buildName, sayBuild } from '#lib/service/tickets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'

/** The person in charge looks why a guest keeps from something; nobody else is ever shown it. */
export function ReasonsPanel() {
  const { reasons: words, needName } = usePrivacyWords()
  const { passphrase: labels, house } = useAccessWords()
  const service = useCrew((view) => view.service)
  const [passphrase, setPassphrase] = useState('')
  const [told, setTold] = useState<ReasonsTold['reasons'] | null>(null)
  const [refused, setRefused] = useState<Refused | null>(null)
  const show = async () => {
    if (service === null || passphrase === '') return
    const asked: AskReasons = { service, passphrase }
    setPassphrase('')
    setRefused(null)
    const answer = await tell<ReasonsTold>('/access/reasons', asked)
    if (isRefused(answer)) setRefused(answer)
    else setTold(answer.reasons)
  }
  return (
    <Panel title={words.title} label={words.title} facts={[words.what]}>
      {told ? (
        <div className={page.form}>
          {told.length === 0 ? (
            <p>{words.none}</p>
          ) : (
            <ul>
              {told.map(({ ticket, letter, need, reason }) => (
                <li key={`${ticket}${letter}${need}`}>
                  <b>{sayBuild(buildName(ticket, letter))}</b> {needName(need as NeedCode)}:{' '}
                  {words.of[reason]}
                </li>
              ))}
            </ul>
          )}
          <Button onClick={() => setTold(null)}>{words.hide}</Button>
        </div>
      ) : (
        <form
          className={page.form}
          onSubmit={(event) => {
            event.preventDefault()
            void show()
          }}
        >
          <PassphraseLine label={labels.passphrase} value={passphrase} onChange={setPassphrase} />
          <RefusedSaid refused={refused} notIt={labels.notInCharge} />
          <Button type="submit" lacks={passphrase === '' ? house.lacksPassphrase : null}>
            {words.show}
          </Button>
        </form>
      )}
    </Panel>
  )
}
