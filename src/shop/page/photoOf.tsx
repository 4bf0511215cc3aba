import { useEffect, useState } from 'preact/hooks';
import { fetchFile } from './link/serverCalls.js';
import type { ShopOnPage } from './link/shopOnPage.js';

/** A photo of a block, or a word in its place while it waits to be sent. */
export function PhotoOf({
  name,
  shop,
  block,
}: {
  readonly name: string;
  readonly shop: ShopOnPage;
  readonly block: string;
}) {
  const [url, setUrl] = useState<string>();
  useEffect(() => {
    if (name === '') return;
    let made: string | undefined;
    void fetchFile(`/api/photos/${name}`, shop.key).then((address) => {
      made = address;
      setUrl(address);
    });
    return () => made !== undefined && URL.revokeObjectURL(made);
  }, [name]);
  return url === undefined ? (
    <p>Photo {name === '' ? 'waiting to be sent' : 'not here yet'}</p>
  ) : (
    <img src={url} alt={`Photo of ${block}`} />
  );
}
