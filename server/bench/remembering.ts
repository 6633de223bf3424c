/**
 * A pure function that remembers its last answers, for what takes a while and is asked again at once.
 *
 * @param answer depends on its question alone, which is plain data
 * @param most answers kept; the one longest unasked goes first
 */
export function remembering<Question, Answer>(
  answer: (question: Question) => Answer,
  most: number,
): (question: Question) => Answer {
  const answers = new Map<string, Answer>();
  return (question) => {
    const key = JSON.stringify(question);
    const known = answers.has(key) ? (answers.get(key) as Answer) : answer(question);
    // Taken out and put in again, so that the map's order is that of asking.
    answers.delete(key);
    answers.set(key, known);
    const [oldest] = answers.keys();
    if (answers.size > most && oldest !== undefined) answers.delete(oldest);
    return known;
  };
}
