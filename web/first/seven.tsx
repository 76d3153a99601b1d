const questions = [
  ['What have I got?', 'Your shelf, the start in hand, what your bench owns'],
  ['What can it become?', 'Everything downstream, with its best yield and steps'],
  ['Which way?', 'Routes side by side; buy or make each co-reactant'],
  ['How much?', 'Every charge of every step, and how far it may stray'],
  ['What do I need?', 'One list in real packs, net of the shelf; the days'],
  ['What can hurt?', 'One list, unknowns first; what may not meet; waste'],
  ['What happened?', 'What you weighed, and the rest planned again'],
] as const

/** What a plan answers, as the sheet will stand: the seven questions, still empty. */
export const Seven = () => (
  <section class="seven" aria-label="What a plan answers">
    <ol>
      {questions.map(([ask, told], at) => (
        <li key={ask}>
          <span class="no">{at + 1}</span>
          <span>
            <span class="ask">{ask}</span>
            <span class="told">{told}</span>
          </span>
        </li>
      ))}
    </ol>
    <p class="s soft">
      All of it prints as the pack you take to the bench. Plans are kept on this machine alone. Quantities are estimates: read the safety
      data sheets; local codes and licensed practice decide; do not work alone.
    </p>
  </section>
)
