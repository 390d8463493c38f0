import styles from '#components/hand-over/hand-over.module.css'
import { type HandOverWords, useHandOverWords } from '#components/hand-over/words.tsx'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import { sayBuild } from '#lib/service/tickets.ts'

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
  const words = useHandOverWords()
  return (
    <div className={styles.paidLine} data-paid={build.paid}>
      <span>
        {build.paid ? words.paid : words.toPay(words.sayCents(build.totalCents, currency))}
      </span>
      <button
        type="button"
        disabled={busy}
        aria-label={build.paid ? words.unpayOf(build.name) : words.payOf(build.name)}
        onClick={() => onPay(!build.paid)}
      >
        {build.paid ? words.unpay : words.pay}
      </button>
    </div>
  )
}

/**
 * What tells a build from others of the same item on the shelf. Of a kept-apart one nothing of its
 * mark: the guest says it first, and it is compared then.
 */
const tellsApart = (words: HandOverWords, { name, mark, alike, askFirst }: OnShelf): string => {
  if (askFirst) return words.alikeApart(name)
  const only = alike ? words.markLines(alike.differs) : []
  return only.length > 0 ? only.join(' · ') : words.alikeOwn(words.markLines(mark).join(' · '))
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
  const words = useHandOverWords()
  const lines = words.markLines(build.mark)
  const mark = lines.length > 0 ? lines.join(' · ') : words.asItComes
  const own = words.alikeOwn(lines.join(' · '))
  const saysAll = build.alike !== null && [mark, own].includes(tellsApart(words, build))
  return (
    <li
      className={styles.card}
      data-ask={build.askFirst}
      data-paid={build.paid}
      data-build={build.name}
    >
      <div className={styles.texts}>
        <header className={styles.cardTop}>
          <h2>{sayBuild(build.name)}</h2>
          <p className={styles.what}>
            <span>{build.item}</span>
            {guest !== null && <b>{guest}</b>}
          </p>
          <span className={styles.stood}>
            {build.paid && <span className={styles.isPaid}>{words.paid} · </span>}
            {words.stood(now - build.madeAt)}
          </span>
        </header>
        {build.until && (
          <p className={styles.until} data-late={now >= build.until.collectBy}>
            <b>{words.collectBy(words.sayTime(build.until.collectBy, timeZone))}</b>
            {build.until.throwOutAt !== null && (
              <span>{words.throwOutAt(words.sayTime(build.until.throwOutAt, timeZone))}</span>
            )}
          </p>
        )}
        {build.alike && (
          <p className={styles.alike}>
            <span>
              {words.alike(build.alike.names)}{' '}
              <span className={styles.thisOne}>{words.thisOne}</span>
            </span>
            <b>{tellsApart(words, build)}</b>
          </p>
        )}
        {build.askFirst && <p className={styles.apart}>{words.askFirstHint}</p>}
        {!build.askFirst && !saysAll && <p className={styles.mark}>{mark}</p>}
        {build.siblings.length > 0 && (
          <p className={styles.siblings}>
            {build.siblings.map((one) => (
              <span key={one.name} data-state={one.state}>
                {words.sibling(one.name, one.state)}
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
          {build.askFirst ? words.askFirst(build.name) : words.handOver(build.name)}
        </button>
        <button
          type="button"
          className={styles.wrong}
          aria-label={words.wrongOf(build.name)}
          onClick={() => acts.wrong(build)}
        >
          {words.wrong}
        </button>
      </div>
    </li>
  )
}
