import { type SignInSlip, slipLink } from "@/lib/workshop";
import { QrCode } from "./qr-code";

interface SlipProps {
  readonly slip: SignInSlip;
  readonly workshop: string;
  /** Of the workshop, as learners type it. */
  readonly address: string;
}

/** What would take a second line is written smaller. */
const sizeOf = (text: string) => (text.length > 24 ? "slip-long" : undefined);

/** What one person needs to sign in the first time, of a size to cut out. */
export function Slip({ slip, workshop, address }: SlipProps) {
  const { name, signInName, code } = slip;
  return (
    <div className="slip">
      <div className="slip-words">
        <p className="slip-small slip-workshop">{workshop}</p>
        <p className={name.length > 36 ? "slip-name slip-long" : "slip-name"}>{name}</p>
        <dl>
          <dt>Address</dt>
          <dd className={sizeOf(address)}>{address}</dd>
          <dt>Sign-in name</dt>
          <dd className={sizeOf(signInName)}>{signInName}</dd>
          <dt>One-time code</dt>
          <dd className="slip-code">{code}</dd>
        </dl>
      </div>
      <div className="slip-scan">
        <QrCode text={slipLink(address, slip)} label={`QR code that signs ${name} in`} />
        <p className="slip-small">Scan it, or type the address.</p>
      </div>
      <p className="slip-small slip-foot">
        Then choose a password of your own; this code stops working. The slip is yours alone: show it to nobody.
      </p>
    </div>
  );
}
