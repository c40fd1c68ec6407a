import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import "./globals.css";

export const metadata: Metadata = {
  title: { default: "Toeline", template: "%s · Toeline" },
  description: "Practice for visual weld inspection.",
  icons: { icon: "/toeline.svg" },
};

export const viewport: Viewport = { width: "device-width", initialScale: 1, themeColor: "#1e2225" };

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en">
      <body>
        <a
          href="#main"
          className="sr-only focus:not-sr-only focus:absolute focus:top-2 focus:left-2 focus:z-50 focus:rounded focus:bg-sheet focus:px-4 focus:py-2 focus:text-ink"
        >
          Skip to the page itself
        </a>
        {children}
      </body>
    </html>
  );
}
