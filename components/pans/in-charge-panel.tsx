import styles from '#components/job/job.module.css'
import type { TaskProps } from '#components/job/task-props.ts'
import { useInChargeWords } from '#components/start/in-charge-words.tsx'
import { SignOn } from '#components/start/sign-on.tsx'

/** The person in charge signs on or off, by passphrase. */
export function InChargePanel({ state, acting }: TaskProps<'in-charge'>) {
  const words = useInChargeWords()
  return (
    <div className={styles.two}>
      <SignOn state={state} acting={acting} />
      <div className={styles.what}>
        <p>{words.what}</p>
        <p>{words.without}</p>
      </div>
    </div>
  )
}
