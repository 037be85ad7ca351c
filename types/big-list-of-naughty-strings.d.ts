declare module "big-list-of-naughty-strings" {
  const texts: readonly string[];
  export default texts;
}
