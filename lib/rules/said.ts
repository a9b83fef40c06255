/**
 * Marks words that are kept as a constant or made where no screen is: they stay English here and are translated at the place of
 * showing, by `t(CONSTANT)`. `npm run words` finds them by this mark.
 */
export const said = <Text extends string>(text: Text): Text => text;
