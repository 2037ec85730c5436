import Foundation
import Glibc

/// OpenSSL's libcrypto as it lies on this machine (its manual, section 3). No secure hardware is here: a key of this kind is for tests only.
enum LibCrypto {
    private nonisolated(unsafe) static let library: UnsafeMutableRawPointer = {
        guard let found = dlopen("libcrypto.so.3", RTLD_NOW) else { fatalError("no libcrypto.so.3 on this machine") }
        return found
    }()

    private static func function<Signature>(_ name: String, _ type: Signature.Type) -> Signature {
        guard let found = dlsym(library, name) else { fatalError("libcrypto has no \(name)") }
        return unsafeBitCast(found, to: type)
    }

    typealias Pointer = OpaquePointer

    static let newContextOf = function("EVP_PKEY_CTX_new_id", (@convention(c) (Int32, Pointer?) -> Pointer?).self)
    static let keygenInit = function("EVP_PKEY_keygen_init", (@convention(c) (Pointer?) -> Int32).self)
    static let setCurve = function("EVP_PKEY_CTX_set_ec_paramgen_curve_nid", (@convention(c) (Pointer?, Int32) -> Int32).self)
    static let keygen = function(
        "EVP_PKEY_keygen", (@convention(c) (Pointer?, UnsafeMutablePointer<Pointer?>) -> Int32).self)
    static let freeContext = function("EVP_PKEY_CTX_free", (@convention(c) (Pointer?) -> Void).self)
    static let freeKey = function("EVP_PKEY_free", (@convention(c) (Pointer?) -> Void).self)
    static let publicHalf = function(
        "EVP_PKEY_get1_encoded_public_key",
        (@convention(c) (Pointer?, UnsafeMutablePointer<UnsafeMutablePointer<UInt8>?>) -> Int).self)
    static let newDigest = function("EVP_MD_CTX_new", (@convention(c) () -> Pointer?).self)
    static let freeDigest = function("EVP_MD_CTX_free", (@convention(c) (Pointer?) -> Void).self)
    static let sha256Kind = function("EVP_sha256", (@convention(c) () -> Pointer?).self)
    static let signInit = function(
        "EVP_DigestSignInit", (@convention(c) (Pointer?, Pointer?, Pointer?, Pointer?, Pointer?) -> Int32).self)
    static let signWhole = function(
        "EVP_DigestSign",
        (@convention(c) (Pointer?, UnsafeMutablePointer<UInt8>?, UnsafeMutablePointer<Int>, UnsafePointer<UInt8>?, Int) -> Int32).self)
    static let sha256Of = function(
        "SHA256", (@convention(c) (UnsafePointer<UInt8>?, Int, UnsafeMutablePointer<UInt8>?) -> UnsafeMutablePointer<UInt8>?).self)

    /// SHA-256, lower-case hex.
    static func sha256(_ bytes: Data) -> String {
        var digest = [UInt8](repeating: 0, count: 32)
        let whole = [UInt8](bytes)
        _ = sha256Of(whole, whole.count, &digest)
        return digest.map { String(format: "%02x", $0) }.joined()
    }
}
