import styles from '#components/hand-over/hand-over.module.css'
import { sayCents } from '#lib/quantity/money.ts'
import type { OnShelf } from '#lib/views/hand-over.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { handOverEn as say } from '#lib/words/hand-over-en.ts'
import { markLines } from '#lib/words/service-en.ts'

export interface ShelfActs {
  readonly handOver: (build: OnShelf) => void
  readonly ask: (build: OnShelf) => void
  readonly pay: (build: OnShelf, paid: boolean) => void
  readonly wrong: (build: OnShelf) => void
}

/** Whether the ticket is paid, with the act for it. */
export function PaidLine({
  build,
  currency,
  busy,
  onPay,
}: {
  readonly build: OnShelf
  readonly currency: string
  readonly busy: boolean
  readonly onPay: (paid: boolean) => void
}) {
  return (
    <div className={styles.paidLine} data-paid={build.paid}>
      <span>{build.paid ? say.paid : say.toPay(sayCents(build.totalCents, currency))}</span>
      <button
        type="button"
        disabled={busy}
        aria-label={build.paid ? say.unpayOf(build.name) : say.payOf(build.name)}
        onClick={() => onPay(!build.paid)}
      >
        {build.paid ? say.unpay : say.pay}
      </button>
    </div>
  )
}

/**
 * What tells a build from others of the same item on the shelf. Of a kept-apart one nothing of its
 * mark: the guest says it first, and it is compared then.
 */
const tellsApart = ({ name, mark, alike, askFirst }: OnShelf): string => {
  if (askFirst) return say.alikeApart(name)
  const only = alike ? markLines(alike.differs) : []
  return only.length > 0 ? only.join(' · ') : say.alikeOwn(markLines(mark).join(' · '))
}

/** One build on the shelf: its mark, how long it stands, and the tap that hands it over. */
export function ShelfCard({
  build,
  guest,
  now,
  timeZone,
  currency,
  busy,
  acts,
}: {
  readonly build: OnShelf
  readonly guest: string | null
  /** The server's time, epoch milliseconds. */
  readonly now: number
  readonly timeZone: string
  readonly currency: string
  readonly busy: boolean
  readonly acts: ShelfActs
}) {
  const lines = markLines(build.mark)
  const mark = lines.length > 0 ? lines.join(' · ') : say.usual
  const own = say.alikeOwn(lines.join(' · '))
  const saysAll = build.alike !== null && [mark, own].includes(tellsApart(build))
  return (
    <li
      className={styles.card}
      data-ask={build.askFirst}
      data-paid={build.paid}
      data-build={build.name}
    >
      <div className={styles.texts}>
        <header className={styles.cardTop}>
          <h2>{build.name}</h2>
          <p className={styles.what}>
            <span>{build.item}</span>
            {guest !== null && <b>{guest}</b>}
          </p>
          <span className={styles.stood}>
            {build.paid && <span className={styles.isPaid}>{say.paid} · </span>}
            {say.stood(now - build.madeAt)}
          </span>
        </header>
        {build.until && (
          <p className={styles.until} data-late={now >= build.until.collectBy}>
            <b>{say.collectBy(sayTime(build.until.collectBy, timeZone))}</b>
            {build.until.throwOutAt !== null && (
              <span>{say.throwOutAt(sayTime(build.until.throwOutAt, timeZone))}</span>
            )}
          </p>
        )}
        {build.alike && (
          <p className={styles.alike}>
            <span>
              {say.alike(build.alike.names)} <span className={styles.thisOne}>{say.thisOne}</span>
            </span>
            <b>{tellsApart(build)}</b>
          </p>
        )}
        {build.askFirst && <p className={styles.apart}>{say.askFirstHint}</p>}
        {!build.askFirst && !saysAll && <p className={styles.mark}>{mark}</p>}
        {build.siblings.length > 0 && (
          <p className={styles.siblings}>
            {build.siblings.map((one) => (
              <span key={one.name} data-state={one.state}>
                {say.sibling(one.name, one.state)}
              </span>
            ))}
          </p>
        )}
      </div>
      <PaidLine
        build={build}
        currency={currency}
        busy={busy}
        onPay={(paid) => acts.pay(build, paid)}
      />
      <div className={styles.acts}>
        <button
          type="button"
          className={styles.handOver}
          data-ask={build.askFirst}
          disabled={busy}
          onClick={() => (build.askFirst ? acts.ask(build) : acts.handOver(build))}
        >
          {build.askFirst ? say.askFirst(build.name) : say.handOver(build.name)}
        </button>
        <button
          type="button"
          className={styles.wrong}
          aria-label={say.wrongOf(build.name)}
          onClick={() => acts.wrong(build)}
        >
          {say.wrong}
        </button>
      </div>
    </li>
  )
}
