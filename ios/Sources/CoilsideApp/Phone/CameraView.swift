import AVFoundation
import SwiftUI
import UIKit

/// What a camera sees.
struct CameraView: UIViewRepresentable {
    let session: AVCaptureSession

    func makeUIView(context: Context) -> Finder {
        let finder = Finder(frame: .zero)
        finder.layer.addSublayer(finder.seen)
        finder.seen.session = session
        finder.seen.videoGravity = .resizeAspectFill
        finder.clipsToBounds = true
        return finder
    }

    func updateUIView(_ view: Finder, context: Context) {}
}

/// A view as large as its picture.
final class Finder: UIView {
    let seen = AVCaptureVideoPreviewLayer()

    override func layoutSubviews() {
        super.layoutSubviews()
        seen.frame = bounds
    }
}
