/** "1 write-up", "3 write-ups". Wording only. */
export const counted = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;
