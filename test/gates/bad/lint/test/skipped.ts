interface Each {
  (name: string, run: () => void): void;
  readonly skip: Each;
  readonly only: Each;
  readonly todo: (name: string) => void;
}
declare const it: Each;
declare const expect: (value: unknown) => { toMatchSnapshot: () => void };

it.skip('skipped', () => undefined);
it.only('alone', () => undefined);
it.todo('wished for');
it('pins its own output', () => {
  expect(1).toMatchSnapshot();
});
