package app.coilside

import android.content.Context
import coilside.Now
import java.io.File

/** What the platform gives: time, randomness, keys and a folder come into the shell here and nowhere else. */
interface Ground {
    /** This moment by both clocks; the epoch names the boot. */
    fun now(): Now

    /** Fresh random bytes, at least 32. */
    fun entropy(): ByteArray

    /** The key that signs for this device. */
    fun signer(app: Context): Signer

    /** Where the core keeps everything; never backed up. */
    fun folder(app: Context): File
}

/** The device's P-256 key. What signs is never read out. */
interface Signer {
    /** The public half: SEC 1, uncompressed, 65 bytes. */
    val publicKey: ByteArray

    /** ECDSA with SHA-256 over [bytes], as DER. */
    fun sign(bytes: ByteArray): ByteArray
}
