import { useCallback, useEffect, useState } from 'react'
import { useActing } from '#components/live/acting.ts'
import { useCrew } from '#components/live/crew.tsx'
import styles from '#components/start/in-charge.module.css'
import { useInChargeWords } from '#components/start/in-charge-words.tsx'
import { SignOn } from '#components/start/sign-on.tsx'
import { isRunning } from '#lib/service/state.ts'

/** `lost`: the server didn't answer. */
type Kept = 'finding' | 'lost' | 'set' | 'not-set'

const look = async (): Promise<Kept> => {
  try {
    const answer: unknown = await (await fetch('/access', { cache: 'no-store' })).json()
    if (typeof answer !== 'object' || answer === null || !('house' in answer)) return 'lost'
    return answer.house === 'made' ? 'set' : 'not-set'
  } catch {
    return 'lost'
  }
}

/** The adult who answers for allergies: whether there is a passphrase, and who is signed on. */
export function InChargeCard() {
  const words = useInChargeWords()
  const state = useCrew((view) => view.state)
  const link = useCrew((view) => view.link)
  const acting = useActing(words.loadRefusals)
  const [kept, setKept] = useState<Kept>('finding')
  const isLive = link === 'live'

  const again = useCallback(async () => setKept(await look()), [])
  useEffect(() => {
    if (isLive) void again()
  }, [isLive, again])
  const signedOn = isRunning(state) ? state.inCharge : null
  // It may have been set, and signed on with, on another device.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whoever signs on had a passphrase
  useEffect(() => {
    const look = () => {
      if (document.visibilityState === 'visible') void again()
    }
    look()
    document.addEventListener('visibilitychange', look)
    return () => document.removeEventListener('visibilitychange', look)
  }, [signedOn, again])

  const isOpen = isRunning(state) && state.stage === 'open'

  return (
    <div className={styles.card}>
      <p>{words.what}</p>
      <p>{words.without}</p>
      {kept === 'set' &&
        (isOpen ? (
          <SignOn key={state.service} state={state} acting={acting} />
        ) : (
          <p className={styles.on} data-on="false">
            {words.noService}
          </p>
        ))}
      <p role="status" className={styles.said} data-kind={acting.said?.kind ?? 'done'}>
        {acting.said?.text ?? ''}
      </p>
      {kept === 'not-set' ? (
        <p>
          <b>{words.notSet}</b> {words.setHere}
        </p>
      ) : (
        kept !== 'set' && <p>{kept === 'finding' ? words.finding : words.unknown}</p>
      )}
    </div>
  )
}
