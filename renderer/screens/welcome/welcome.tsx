import { BookOpen } from 'lucide-react';
import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { FIRST_MINUTES } from '../../../core/report/first-minutes.ts';
import { useBegin } from '../../queries/hooks.ts';
import { navigate } from '../../router.ts';
import { classes } from '../../ui/classes.ts';
import { Button } from '../../ui/button.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { base64Of } from '../../queries/base64.ts';
import { FirstMinutes } from '../help/first-minutes.tsx';
import styles from './welcome.module.css';

/** How this computer is set; the first step of the set-up shows it to be corrected. */
function presets() {
  const { timeZone, locale } = Intl.DateTimeFormat().resolvedOptions();
  const { region } = new Intl.Locale(locale).maximize();
  const mark = new Intl.NumberFormat(locale).formatToParts(0.5).find(({ type }) => type === 'decimal')?.value;
  return {
    timeZone,
    units: region !== undefined && COUNTED_IN_INCHES.includes(region) ? 'in' : 'mm',
    decimals: mark === ',' ? 'comma' : 'point',
  } as const;
}

/** Countries whose sheet is bought in inches and gauges. From memory. */
const COUNTED_IN_INCHES = ['US', 'CA', 'LR'];

function EmptyShop({ begin, waits }: { begin: ReturnType<typeof useBegin>['mutate']; waits: boolean }) {
  const [name, setName] = useState('');
  const [tried, setTried] = useState(false);
  const missing = name.trim() === '';

  const submit = () => {
    setTried(true);
    if (missing) return;
    begin(
      { with: 'empty', name: name.trim(), ...presets() },
      { onSuccess: () => navigate('shop', 'set-up', 'shop') },
    );
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
      <Button type="submit" isDisabled={waits}>
        Set up your shop
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
  const [help, setHelp] = useState(false);
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
          <p>Five steps: units, machines, metals, sheet sizes, first orders. Each can be left for later.</p>
          <EmptyShop begin={mutate} waits={isPending} />
          <Button look="quiet" icon={BookOpen} onPress={() => setHelp(true)}>
            {FIRST_MINUTES}
          </Button>
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
      <FirstMinutes isOpen={help} onClose={() => setHelp(false)} leads={false} />
    </main>
  );
}
