import CoilsideCore
import CoilsideKit
import PhotosUI
import SwiftUI

/// A photograph that is wanted: with the camera, the 'before' beside what it sees, or out of the library, where the original file is kept.
struct PhotoSheet: View {
    let wanted: Wanted
    let camera: PhoneCamera
    @Environment(Companion.self) private var companion
    @State private var picked: PhotosPickerItem?

    var body: some View {
        let (words, photos) = (companion.session.words, companion.photos)
        Sheet {
            HStack(spacing: 14) {
                if !wanted.unit.isEmpty { UnitLetter(letter: wanted.unit) }
                VStack(alignment: .leading, spacing: 4) {
                    Text(verbatim: wanted.title).font(.title2.weight(.bold)).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
                    if !wanted.show.isEmpty { Text(verbatim: wanted.show).foregroundStyle(Palette.soft) }
                }
            }
            if let problem = photos.problem {
                Marked(glyph: "danger", text: problem.key.map { words($0) } ?? problem.detail, ink: Palette.danger)
                if problem.key == "shell-camera-refused" { SettingsButton() }
            }
            Beside {
                if photos.stage == .camera {
                    CameraView(session: camera.session)
                        .aspectRatio(3.0 / 4.0, contentMode: .fit)
                        .frame(minWidth: 260, maxHeight: 520)
                        .accessibilityLabel(words("shell-camera-view"))
                }
                if let before { PictureView(photo: before, badge: words("shell-before-picture")) }
                if photos.stage != .camera, before == nil, let drawing { SketchView(drawing: drawing) }
            }
            switch photos.stage {
            case .camera:
                Button {
                    Task { await photos.shutter() }
                } label: {
                    face("camera", words("shell-shutter"))
                }
                .buttonStyle(PlateStyle(tone: .primary, main: true))
            case .starting, .saving:
                HStack(spacing: 12) {
                    ProgressView()
                    Text(verbatim: words(photos.stage == .saving ? "shell-photo-saving" : "shell-camera-starting")).foregroundStyle(Palette.ink)
                }
            case .choose:
                Button {
                    Task { await photos.startCamera() }
                } label: {
                    face("camera", words("shell-take"))
                }
                .buttonStyle(PlateStyle(tone: .primary, main: true))
                // As it is: the system must not make another file of it.
                PhotosPicker(selection: $picked, matching: .images, preferredItemEncoding: .current) { face("picture", words("shell-picture")) }
                    .buttonStyle(PlateStyle(tone: .plain, main: false))
            }
            if photos.stage != .saving {
                Button(words("shell-cancel")) { photos.cancel() }.buttonStyle(PlateStyle(tone: .quiet, main: false))
            }
        }
        .onChange(of: picked) { _, item in if let item { Task { await take(item) } } }
    }

    private var shot: (drawing: Drawing?, before: PhotoView?)? {
        companion.session.screen.flatMap { Arrangement.shot(wanted.slot, in: $0.blocks) }
    }
    private var before: PhotoView? { shot?.before }
    private var drawing: Drawing? { shot?.drawing }

    private func face(_ glyph: String, _ text: String) -> some View {
        HStack(spacing: 10) {
            Glyph(glyph)
            Text(verbatim: text)
        }
    }

    private func take(_ item: PhotosPickerItem) async {
        picked = nil
        guard let bytes = try? await item.loadTransferable(type: Data.self) else { return companion.photos.fileProblem() }
        await companion.photos.take(bytes)
    }
}
