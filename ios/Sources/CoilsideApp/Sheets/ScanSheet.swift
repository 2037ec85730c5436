import CoilsideKit
import SwiftUI
import UIKit

/// Opens the camera for an office's code.
struct ScanButton: View {
    @Environment(Companion.self) private var companion
    @Environment(Overlays.self) private var overlays

    var body: some View {
        Button {
            overlays.scan = true
        } label: {
            HStack(spacing: 10) {
                Glyph("camera")
                Text(verbatim: companion.session.words("shell-code-read"))
            }
        }
        .buttonStyle(PlateStyle(tone: .plain, main: false))
    }
}

/// Reads an office's code with the camera. It only fills the fields: the person still agrees.
struct ScanSheet: View {
    @Environment(Companion.self) private var companion
    @Environment(Overlays.self) private var overlays
    @State private var scanner = CodeScanner()
    @State private var problem: String?

    var body: some View {
        let words = companion.session.words
        Sheet {
            Text(verbatim: words("shell-code-read")).font(.title2.weight(.bold)).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
            if let problem {
                Marked(glyph: "danger", text: words(problem), ink: Palette.danger)
                if problem == "shell-camera-refused" { SettingsButton() }
            }
            CameraView(session: scanner.session)
                .aspectRatio(1, contentMode: .fit)
                .frame(maxHeight: 520)
                .accessibilityLabel(words("shell-camera-view"))
            Button(words("shell-cancel")) { overlays.scan = false }.buttonStyle(PlateStyle(tone: .quiet, main: false))
        }
        .task { await read() }
    }

    private func read() async {
        defer { scanner.stop() }
        do {
            for try await text in try await scanner.texts() {
                if companion.scanned(text, deviceName: UIDevice.current.name) {
                    overlays.scan = false
                    return
                }
                problem = "shell-code-none"
            }
        } catch CameraProblem.denied {
            problem = "shell-camera-refused"
        } catch {
            problem = "shell-camera-none"
        }
    }
}
