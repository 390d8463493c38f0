import styles from '#components/job/panel.module.css'
import { Panel } from '#components/job/panel.tsx'
import type { Acting } from '#components/live/acting.ts'
import { InChargeWordsProvider, useInChargeWords } from '#components/start/in-charge-words.tsx'
import { SignOn } from '#components/start/sign-on.tsx'
import type { RunningState } from '#lib/service/state.ts'

interface InChargePanelProps {
  readonly state: RunningState
  readonly acting: Acting
  readonly onBack: () => void
}

function Signing({ state, acting, onBack }: InChargePanelProps) {
  const words = useInChargeWords()
  return (
    <Panel title={words.title} onBack={onBack}>
      <div className={styles.doing}>
        <SignOn state={state} acting={acting} />
      </div>
      <div className={styles.doing}>
        <p>{words.what}</p>
        <p>{words.without}</p>
      </div>
    </Panel>
  )
}

export function InChargePanel(props: InChargePanelProps) {
  return (
    <InChargeWordsProvider>
      <Signing {...props} />
    </InChargeWordsProvider>
  )
}
