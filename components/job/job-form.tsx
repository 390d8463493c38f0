import type { ReactNode } from 'react'
import styles from '#components/job/job.module.css'
import type { Job } from '#components/job/use-job.ts'
import { Button } from '#components/ui/button.tsx'

interface JobFormProps {
  readonly job: Job
  /** What the main button says, once nothing is lacking. */
  readonly send: ReactNode
  readonly sub?: ReactNode
  /** `no`: it ends or throws out, or says that food is out of its limits. */
  readonly kind?: 'main' | 'no'
  /** Beside what is asked: the pad that it is typed on. */
  readonly side?: ReactNode
  /** Between both: what it is read against. */
  readonly scale?: ReactNode
  /** Other ways, small, beside the main one. */
  readonly ways?: ReactNode
  /** Who decides, or what else is said in small print above the buttons. */
  readonly note?: ReactNode
  readonly children: ReactNode
}

/** The frame of every job: what is asked at the left, what is typed at the right, one main button. */
export function JobForm(props: JobFormProps) {
  const { job, send, sub, kind = 'main', side, scale, ways, note, children } = props
  return (
    <form
      className={styles.job}
      data-scale={scale === undefined ? undefined : ''}
      data-side={side === undefined ? undefined : ''}
      onSubmit={(event) => {
        event.preventDefault()
        job.send()
      }}
    >
      <div className={styles.what}>{children}</div>
      {scale !== undefined && <div className={styles.scale}>{scale}</div>}
      <div className={styles.hands}>
        {side !== undefined && <div className={styles.side}>{side}</div>}
        <div className={styles.send}>
          {note !== undefined && <p className={styles.small}>{note}</p>}
          {ways !== undefined && <div className={styles.ways}>{ways}</div>}
          <Button
            type="submit"
            kind={kind === 'no' ? 'no' : 'main'}
            size="large"
            className={styles.main}
            data-main=""
            lacks={job.lack}
            disabled={job.busy}
            sub={sub}
          >
            {send}
          </Button>
        </div>
      </div>
    </form>
  )
}
