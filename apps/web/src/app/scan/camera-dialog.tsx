import { useEffect, useRef, useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { Busy } from '../../ui/busy.js';
import { Dialog } from '../../ui/dialog.js';
import { readFrames } from './read-frames.js';
import css from './scan.module.css';

interface Props {
  readonly onClose: () => void;
  /** What the symbol holds, as a hand scanner would send it. */
  readonly onText: (text: string) => void;
}

type Trouble = 'cameraRefused' | 'cameraMissing' | 'cameraInsecure' | 'cameraBroken';

/** The camera of the tablet: the picture, until a symbol is read in it. */
export default function CameraDialog({ onClose, onText }: Props) {
  const t = useText();
  return (
    <Dialog title={t.scan.cameraTitle} opened onClose={onClose} size="lg">
      <Picture onText={onText} />
    </Dialog>
  );
}

/** A part of its own: a dialog puts what is in it on the page a moment later. */
function Picture({ onText }: Pick<Props, 'onText'>) {
  const t = useText();
  const { video, trouble, isOpen } = useCamera(onText);
  if (trouble !== undefined) return <p role="alert">{t.scan[trouble]}</p>;
  return (
    <>
      <video ref={video} className={css.video} muted playsInline aria-label={t.scan.cameraTitle} />
      {!isOpen && <Busy />}
      <p className={css.hint}>{isOpen ? t.scan.cameraHint : t.scan.cameraOpening}</p>
    </>
  );
}

function useCamera(onText: (text: string) => void) {
  const video = useRef<HTMLVideoElement>(null);
  const [trouble, setTrouble] = useState<Trouble>();
  const [isOpen, setOpen] = useState(false);
  const latest = useRef(onText);
  useEffect(() => {
    latest.current = onText;
  });
  useEffect(() => {
    const stop = new AbortController();
    const look = async () => {
      const stream = await openCamera();
      const close = () => {
        for (const track of stream.getTracks()) track.stop();
      };
      const screen = video.current;
      if (stop.signal.aborted || !screen) return close();
      stop.signal.addEventListener('abort', close);
      screen.srcObject = stream;
      await screen.play();
      setOpen(true);
      const text = await readFrames(screen, stop.signal);
      if (text !== undefined) latest.current(text);
    };
    look().catch((error: unknown) => {
      if (!stop.signal.aborted) setTrouble(troubleOf(error));
    });
    return () => stop.abort();
  }, []);
  return { video, trouble, isOpen };
}

class InsecurePage extends Error {}

/** The camera on the back, as sharp as it can. Browsers give none to a page without https. */
async function openCamera(): Promise<MediaStream> {
  if (!window.isSecureContext) throw new InsecurePage();
  return navigator.mediaDevices.getUserMedia({
    audio: false,
    video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } },
  });
}

/** A bug of ours is not shown as trouble with the camera. */
function troubleOf(error: unknown): Trouble {
  if (error instanceof InsecurePage) return 'cameraInsecure';
  if (!(error instanceof DOMException)) throw error;
  if (error.name === 'NotAllowedError') return 'cameraRefused';
  return error.name === 'NotFoundError' ? 'cameraMissing' : 'cameraBroken';
}
