import * as kept from "../../src/core/made-once";
import * as forOneTest from "../mutation/kept-for-one-test";

const { madeLately, madeOnce, madeOnceByKey, madeOnceWeakly, once } = kept;

const counting = () => {
  const made: object[] = [];
  return { made, make: (): object => { const fresh = {}; made.push(fresh); return fresh; } };
};

test("what is asked for again is what was made, however it is kept", () => {
  const key = {};
  const { made, make } = counting();
  const [only, ofObject, weakly, byKey, lately] = [once(make), madeOnce<object, object>(make), madeOnceWeakly<object, object>(make), madeOnceByKey<object>(), madeLately<object, object>()];
  for (const ask of [only, () => ofObject(key), () => weakly(key), () => byKey("key", make), () => lately(key, make)]) {
    const before = made.length;
    expect(ask()).toBe(ask());
    expect(made).toHaveLength(before + 1);
  }
});

test("what is made for one object is not given for another", () => {
  const { make } = counting();
  for (const ask of [madeOnce<object, object>(make), madeOnceWeakly<object, object>(make)]) expect(ask({})).not.toBe(ask({}));
});

test("a full store forgets all, says so, and makes anew what is still wanted", () => {
  const { made, make } = counting();
  const told = jest.fn();
  const byKey = madeOnceByKey<object>(2, told);
  for (const key of ["a", "b", "c"]) byKey(key, make);
  expect(told).toHaveBeenCalledTimes(1);
  byKey("c", make);
  expect(made).toHaveLength(3);
  byKey("a", make);
  expect(made).toHaveLength(4);
});

test("what stands for it while mutants are tried has all that it has", () => expect(Object.keys(forOneTest)).toEqual(expect.arrayContaining(Object.keys(kept))));
