import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { useBegin } from '../../queries/hooks.ts';
import { classes } from '../../ui/classes.ts';
import { Button } from '../../ui/button.tsx';
import { Combo, Select } from '../../ui/choice.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { base64Of } from '../orders/import/base64.ts';
import styles from './welcome.module.css';

const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
const zones = [...new Set([here, ...Intl.supportedValuesOf('timeZone')])].map((zone) => ({
  id: zone,
  name: zone.replaceAll('_', ' '),
}));
const units = [
  { id: 'in', name: 'Inches and feet' },
  { id: 'mm', name: 'Millimetres' },
];

function EmptyShop({ begin, waits }: { begin: ReturnType<typeof useBegin>['mutate']; waits: boolean }) {
  const [name, setName] = useState('');
  const [timeZone, setTimeZone] = useState(here);
  const [unit, setUnit] = useState<'in' | 'mm'>('in');
  const [tried, setTried] = useState(false);
  const missing = name.trim() === '';

  const submit = () => {
    setTried(true);
    if (!missing) begin({ with: 'empty', name: name.trim(), timeZone, units: unit });
  };
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <TextField
        label="Name of the shop"
        value={name}
        onChange={setName}
        maxLength={120}
        error={tried && missing ? 'Give the shop a name; it is printed on the papers.' : undefined}
      />
      <Combo label="Time zone" options={zones} value={timeZone} onChange={setTimeZone} />
      <Select
        label="Lengths"
        options={units}
        value={unit}
        onChange={(id) => setUnit(id === 'mm' ? 'mm' : 'in')}
      />
      <Button type="submit" isDisabled={waits}>
        Start an empty shop
      </Button>
    </form>
  );
}

/** Sent packed: the text of ten years of orders is long. */
async function packed(file: File): Promise<string> {
  const stream = file.stream().pipeThrough(new CompressionStream('gzip'));
  return base64Of(new Uint8Array(await new Response(stream).arrayBuffer()));
}

function OpenExport({ begin, waits }: { begin: ReturnType<typeof useBegin>['mutate']; waits: boolean }) {
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (file: File) => {
    setTrouble(null);
    const gzipBase64 = await packed(file).catch(() => null);
    if (gzipBase64 !== null) begin({ with: 'export', fileName: file.name, gzipBase64 });
    else setTrouble(`${file.name} could not be read. Nothing was taken from it; choose it again.`);
  };
  return (
    <>
      {trouble && <SentenceError message={trouble} />}
      <FileTrigger
        acceptedFileTypes={['.json', 'application/json']}
        onSelect={(files) => {
          const file = files?.[0];
          if (file) void take(file);
        }}
      >
        <Button isDisabled={waits}>Open an export</Button>
      </FileTrigger>
    </>
  );
}

/** The first start: try the invented shop, begin with one's own, or bring one along. */
export function Welcome() {
  const { mutate, isPending, error } = useBegin();
  return (
    <main className={styles.welcome}>
      <header>
        <h1 className={styles.title}>Welcome to Foldweek</h1>
        <p>Work orders in, a week’s plan for the shear and the brakes out. How do you want to start?</p>
      </header>
      {error && <SentenceError message={error.message} />}
      <div className={styles.ways}>
        <section className={styles.way}>
          <h2>Look around first</h2>
          <p>
            An invented trim shop with a shear, two brakes, and three weeks of orders. Everything can be
            changed and undone; nothing in it is real.
          </p>
          <Button look="primary" isDisabled={isPending} onPress={() => mutate({ with: 'demo' })}>
            {isPending ? 'Filling the shop…' : 'Open the demo shop'}
          </Button>
        </section>
        <section className={styles.way}>
          <h2>Start with your shop</h2>
          <p>An empty shop. Add your machines and parts, then import or type in orders.</p>
          <EmptyShop begin={mutate} waits={isPending} />
        </section>
        <section className={classes(styles.way, styles.wide)}>
          <h2>Bring a shop along</h2>
          <p>
            Everything of another data file: choose everything.json from a folder that “Export everything” in
            its Settings wrote.
          </p>
          <OpenExport begin={mutate} waits={isPending} />
        </section>
      </div>
      <p className={styles.caution}>
        Foldweek plans; it does not run machines. Shears and brakes maim: the machine maker’s manual and your
        local safety rules come before any figure on these screens.
      </p>
    </main>
  );
}
