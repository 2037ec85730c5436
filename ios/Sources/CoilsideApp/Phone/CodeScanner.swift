import AVFoundation
import CoilsideKit
import Foundation

/// Reads QR codes with the camera, one text after another.
final class CodeScanner: NSObject, AVCaptureMetadataOutputObjectsDelegate, @unchecked Sendable {
    /// What the finder shows.
    let session = AVCaptureSession()
    private let queue = DispatchQueue(label: "coilside.codes")
    private var told: AsyncThrowingStream<String, any Error>.Continuation?

    /// Every code that comes before the camera, each as long as it is there.
    func texts() async throws -> AsyncThrowingStream<String, any Error> {
        try await CameraLeave.ask()
        let (texts, told) = AsyncThrowingStream.makeStream(of: String.self, throwing: (any Error).self)
        queue.async { [self] in
            self.told = told
            guard let device = AVCaptureDevice.default(.builtInWideAngleCamera, for: .video, position: .back),
                let input = try? AVCaptureDeviceInput(device: device), session.canAddInput(input)
            else { return told.finish(throwing: CameraProblem.none) }
            let output = AVCaptureMetadataOutput()
            session.addInput(input)
            guard session.canAddOutput(output) else { return told.finish(throwing: CameraProblem.none) }
            session.addOutput(output)
            // Known only once the output belongs to the session.
            output.metadataObjectTypes = [.qr]
            output.setMetadataObjectsDelegate(self, queue: queue)
            session.startRunning()
        }
        return texts
    }

    func stop() {
        queue.async { [self] in
            session.stopRunning()
            told?.finish()
        }
    }

    func metadataOutput(_ output: AVCaptureMetadataOutput, didOutput metadataObjects: [AVMetadataObject], from connection: AVCaptureConnection) {
        for case let code as AVMetadataMachineReadableCodeObject in metadataObjects {
            if let text = code.stringValue { told?.yield(text) }
        }
    }
}
