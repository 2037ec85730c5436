import CoilsideKit
import SwiftUI
import UIKit
import WebKit

/// The owner's summary: to show, share and print on the spot.
struct SummarySheet: View {
    @Environment(Companion.self) private var companion
    @Environment(Overlays.self) private var overlays
    @State private var file: URL?
    @State private var problem: Trouble?

    var body: some View {
        let words = companion.session.words
        VStack(spacing: 0) {
            if let file {
                SummaryPage(file: file)
            } else if let problem {
                StateView(words: words, text: problem.detail)
            } else {
                StateView(text: nil)
            }
            Beside {
                if let file {
                    ShareLink(item: file) { Text(verbatim: words("shell-share")) }.buttonStyle(PlateStyle(tone: .primary, main: false))
                    Button(words("shell-print")) { print(file) }.buttonStyle(PlateStyle(tone: .plain, main: false))
                }
                Button(words("shell-close")) { overlays.summary = false }.buttonStyle(PlateStyle(tone: .quiet, main: false))
            }
            .padding(Measure.gap)
        }
        .background(Palette.ground)
        .accessibilityAddTraits(.isModal)
        .task { await write() }
    }

    private func write() async {
        do { file = try await companion.summary() } catch { problem = .of(error) }
    }

    private func print(_ file: URL) {
        guard let page = try? String(contentsOf: file, encoding: .utf8) else { return }
        let paper = UIPrintInteractionController.shared
        paper.printFormatter = UIMarkupTextPrintFormatter(markupText: page)
        paper.present(animated: true, completionHandler: nil)
    }
}

/// A page out of a file. It needs nothing else, and no script of it runs.
private struct SummaryPage: UIViewRepresentable {
    let file: URL

    func makeUIView(context: Context) -> WKWebView {
        let how = WKWebViewConfiguration()
        how.defaultWebpagePreferences.allowsContentJavaScript = false
        let view = WKWebView(frame: .zero, configuration: how)
        view.loadFileURL(file, allowingReadAccessTo: file.deletingLastPathComponent())
        return view
    }

    func updateUIView(_ view: WKWebView, context: Context) {}
}
